import type { Tx } from '../../platform/database/client.ts';
import { fromDbDate } from '../../platform/database/dates.ts';
import { type Standing, standingsOnVisit } from '../directives/public.ts';
import { type Holders, item, type OpenItem } from './open-item.ts';
import type { ReleaseFacts } from './release-facts.ts';

/**
 * Required directives that apply and are not done, or of which nobody can tell whether they apply. One that was put off until a day still to
 * come holds nothing; a recommended one is for the owner to decide.
 */
export async function directiveItems(
  tx: Tx,
  { workOrder }: ReleaseFacts,
  { holders, today }: { holders: Holders; today: string },
): Promise<OpenItem[]> {
  const { standings } = await standingsOnVisit(tx, { workOrderId: workOrder.id, today });
  return standings
    .filter(({ directive, state }) => directive.binding === 'required' && (state === 'open' || state === 'undecided'))
    .map(({ called, directive, name, reason }) =>
      item('directive', `${called}, ${directive.title}: ${name}. ${reason}`, {
        people: holders.get('final-inspection inspect') ?? [],
        subject: { kind: 'directive', id: directive.id },
      }),
    );
}

/**
 * What was done of directives on this visit and what of them was put off, with what the owner's record needs of each: method, number,
 * revision date, and when it is next due (14 CFR 91.417(a)(2)(v)).
 */
export async function directiveReferences(tx: Tx, { workOrder }: ReleaseFacts, today: string): Promise<string[]> {
  const { standings, records } = await standingsOnVisit(tx, { workOrderId: workOrder.id, today });
  const here = new Set(
    records
      .filter(({ workOrderId }) => workOrderId === workOrder.id)
      .map(({ directiveId, itemId }) => `${directiveId} ${itemId}`),
  );
  return standings.filter(({ directive, itemId }) => here.has(`${directive.id} ${itemId}`)).map(inWords);
}

function inWords({ called, directive, name, state, reason, last }: Standing): string {
  const stands =
    { complied: 'complied with', deferred: 'deferred', terminated: 'terminated' }[state as string] ?? state;
  return `${called} of ${fromDbDate(directive.issuedOn)}, ${directive.title}, ${name}: ${stands}. ${reason}. ${last?.method ?? ''}`.trim();
}
