import type { SheetOf } from '@hubwright/contracts/manuals/sheets';
import { type Adapter, missingTorque, passesOf, type TorqueDone } from '@hubwright/rules/torque';

/** Whether an adapter sits on the drive, and how long; null until somebody said so. */
export interface AdapterDraft {
  readonly effect: 'none' | Adapter['effect'] | null;
  readonly lever: string;
  readonly length: string;
}
export const noAdapter: AdapterDraft = { effect: null, lever: '', length: '' };

/** A torque sheet as it is being filled in. Passes stand in the sequence of the sheet. */
export interface TorqueDraft {
  readonly threads: readonly string[];
  readonly adapters: Readonly<Record<string, AdapterDraft>>;
  readonly passes: readonly { readonly setting: string; readonly places: readonly string[] }[];
  readonly cycled: string;
  readonly safetied: readonly string[];
}
export const nothingTorqued: TorqueDraft = { threads: [], adapters: {}, passes: [], cycled: '', safetied: [] };

export const adapterOf = (draft: TorqueDraft, group: string) => draft.adapters[group] ?? noAdapter;
export const passDraft = (draft: TorqueDraft, index: number) => draft.passes[index] ?? { setting: '', places: [] };

/** The draft with one pass changed. */
export function withPass(draft: TorqueDraft, index: number, change: Partial<TorqueDraft['passes'][number]>) {
  const length = Math.max(draft.passes.length, index + 1);
  const passes = Array.from({ length }, (_, at) =>
    at === index ? { ...passDraft(draft, at), ...change } : passDraft(draft, at),
  );
  return { ...draft, passes };
}

/** An adapter as the rule takes it; undefined where there is none. */
export function adapterGiven({ effect, lever, length }: AdapterDraft): Adapter | undefined {
  return effect === null || effect === 'none' ? undefined : { lever, length, effect };
}

/** What is done so far, up to the last pass that was begun. */
export function torqueDone(draft: TorqueDraft, spec: SheetOf<'torque'>): TorqueDone {
  const asked = passesOf(spec);
  const begun = draft.passes.findLastIndex(({ setting, places }) => setting !== '' || places.length > 0) + 1;
  const passes = asked.slice(0, begun).map(({ group, title }, index) => {
    const adapter = adapterGiven(adapterOf(draft, group.name));
    const given = passDraft(draft, index);
    return { group: group.name, pass: title, ...given, ...(adapter ? { adapter } : {}) };
  });
  const cycled = /^\d{1,4}$/.test(draft.cycled) ? { cycled: Number(draft.cycled) } : {};
  return { passes, threads: draft.threads, safetied: draft.safetied, ...cycled };
}

/** What is missing, by name; empty when nothing is. */
export function torqueLeft(draft: TorqueDraft, spec: SheetOf<'torque'>): string {
  const unsaid = spec.groups.find(({ name }) => {
    const { effect, lever, length } = adapterOf(draft, name);
    return effect === null || (effect !== 'none' && (lever === '' || length === ''));
  });
  if (unsaid) return `whether an adapter is on the wrench for ${unsaid.name} is not said`;
  return missingTorque(torqueDone(draft, spec), spec) ?? '';
}

/** The place to tighten next, so that no other can be ticked; undefined where something comes before it. */
export function nextPlace(draft: TorqueDraft, spec: SheetOf<'torque'>): { index: number; place: string } | undefined {
  const cycled = Number(draft.cycled) >= spec.cycles;
  for (const [index, pass] of passesOf(spec).entries()) {
    const { setting, places } = passDraft(draft, index);
    const place = pass.places[places.length];
    if (place === undefined) continue;
    const isReady = draft.threads.includes(pass.group.name) && setting !== '' && (!pass.afterCycling || cycled);
    return isReady ? { index, place } : undefined;
  }
  return undefined;
}
