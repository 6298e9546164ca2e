import { type DeclaredEvent, eventTitles, type Scope, scopes, scopeTitles } from '@hubwright/contracts/manuals/words';

interface ModelKind {
  readonly kind: string;
  readonly pitch: string;
}

const notForGovernors: readonly Scope[] = ['fixed-pitch', 'balance-only', 'strike-inspection'];
const noAnswerToEvents: readonly Scope[] = ['reseal', 'balance-only'];

/** The scopes this kind of unit can have; after a declared event without those that do not answer it. */
export function scopeChoices(model: ModelKind | undefined, events: readonly DeclaredEvent[]) {
  return scopes
    .filter((scope) => {
      if (events.length > 0 && noAnswerToEvents.includes(scope)) return false;
      if (!model) return true;
      if (model.kind === 'governor') return !notForGovernors.includes(scope);
      if (scope === 'fixed-pitch') return model.pitch === 'fixed';
      return scope !== 'governor';
    })
    .map((value) => ({ value, text: scopeTitles[value] }));
}

/** What a declared event means for this visit, said while the customer is still at the desk. */
export function consequences(events: readonly DeclaredEvent[]): string[] {
  if (events.length === 0) return [];
  const names = events.map((event) => eventTitles[event].toLowerCase()).join(', ');
  return [
    `After ${names} the manual asks for an inspection of its own: reseal and balance only are not offered.`,
    'The preliminary inspection will include hidden damage.',
    'Ask whether engine and governor of the same installation are inspected too; the current approved manuals say how.',
    'Ask whether an insurer or investigator must see it first; if so, hold it below.',
  ];
}

/** A one-piece propeller and a governor have neither hub nor blades of their own. */
export function isOnePiece(model: ModelKind): boolean {
  return model.kind === 'governor' || model.pitch === 'fixed';
}
