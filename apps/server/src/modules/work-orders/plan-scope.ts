import { type DeclaredEvent, eventTitles, type Scope, scopeTitles } from '@hubwright/contracts/manuals/words';
import { type Consent, consentTable, consentTitles, next } from '@hubwright/contracts/work-orders/states';
import { mostOf } from '@hubwright/rules/record-words';
import { found } from '../../platform/command/version.ts';
import type { Tx } from '../../platform/database/client.ts';
import { fromDbDate } from '../../platform/database/dates.ts';
import type { Reads } from '../../platform/database/reads.ts';
import { askAbout, refuseScope } from './check-arrival.ts';
import { type Comparison, compareWith } from './compare-work.ts';
import { preliminaryInspection } from './looked-at.ts';
import type { Difference } from './revision-differences.ts';

/** What is agreed about a unit: what to do, and what happened to it. */
export interface Agreed {
  readonly scope: Scope;
  readonly events: readonly DeclaredEvent[];
}

/** A work order with what planning other work reads of it. */
export type PlannedWorkOrder = NonNullable<Awaited<ReturnType<typeof workOrderToPlan>>>;

export interface ScopePlan extends Comparison {
  readonly from: Agreed;
  readonly to: Agreed;
  readonly prompts: string[];
  /** The unit was looked at before these events were declared. */
  readonly needsHiddenDamage: boolean;
}

export function workOrderToPlan(tx: Tx, id: string) {
  return tx.workOrder.findUnique({ where: { id }, include: { model: true, quotes: true } });
}

/**
 * All that another scope, or other events, change for a unit in the shop. Reads only: the command and the page ask the same.
 * Throws `scope-refused` or `route-missing`.
 */
export async function planScope(tx: Tx, workOrder: PlannedWorkOrder, to: Agreed): Promise<ScopePlan> {
  refuseScope({ scope: to.scope, events: [...to.events] }, workOrder.model);
  const from = { scope: workOrder.scope as Scope, events: workOrder.events as DeclaredEvent[] };
  const comparison = await compareWith(tx, workOrder, { ...to, revisionId: workOrder.revisionId });
  const added = to.events.filter((event) => !from.events.includes(event));
  const lookedAt = added.length > 0 && (await preliminaryInspection(tx, workOrder.id)) !== null;
  return {
    ...comparison,
    ...{ from, to, needsHiddenDamage: lookedAt },
    differences: [...scopeDifferences(workOrder, { from, to }), ...comparison.differences],
    // The work goes back to the customer: a closed build opens again, whatever the new scope asks of it.
    reopensBuild: workOrder.stage === 'final-inspection',
    prompts: [...askAbout(added), ...(added.length > 0 ? await neighbours(tx, workOrder) : [])],
  };
}

/** The same for a read, outside any transaction. Nothing is written on this way, so the read-only models serve as well. */
export async function planScopeForReading(
  models: Reads['models'],
  workOrderId: string,
  to: Agreed,
): Promise<ScopePlan> {
  const tx = models as unknown as Tx;
  return planScope(tx, found(await workOrderToPlan(tx, workOrderId), 'This work order'), to);
}

/** Quotes that no longer say what is asked for; what was found and approved beyond them stays agreed. */
export function outdatedQuotes({ quotes }: Pick<PlannedWorkOrder, 'quotes'>) {
  return quotes.filter(
    ({ kind, state }) =>
      (kind !== 'over-and-above' && ['draft', 'sent', 'silent'].includes(state)) ||
      (kind === 'firm' && state === 'approved'),
  );
}

function scopeDifferences(workOrder: PlannedWorkOrder, { from, to }: { from: Agreed; to: Agreed }): Difference[] {
  const [could, can] = [mostOf(from.scope), mostOf(to.scope)];
  const time = (restarts: boolean) => (restarts ? 'starts again at the release' : 'goes on');
  const consent = workOrder.consent as Consent;
  const then = next(consentTable, consent, 'change-scope')?.to ?? consent;
  const lines: [what: string, before: string, after: string, consequences?: string[]][] = [
    ['Scope', scopeTitles[from.scope], scopeTitles[to.scope]],
    ['Declared events', eventWords(from.events), eventWords(to.events)],
    ['What the record may say at most', could.word, can.word],
    ['Time since overhaul', time(could.restartsTimeSinceOverhaul), time(can.restartsTimeSinceOverhaul)],
    ['Consent of the customer', consentTitles[consent], consentTitles[then], consentFollows(workOrder)],
  ];
  return lines
    .filter(([, before, after, follows = []]) => before !== after || follows.length > 0)
    .map(([what, before, after, consequences = []]) => ({
      ...{ area: 'scope' as const, change: 'changed' as const, where: workOrder.number },
      ...{ what, before, after, consequences },
    }));
}

/** What the customer was offered and no longer is. */
export function consentFollows(workOrder: PlannedWorkOrder): string[] {
  const offers = outdatedQuotes(workOrder).map(({ number }) => `${number} no longer stands: a new one is written`);
  const { promisedOn } = workOrder;
  return promisedOn
    ? [...offers, `${fromDbDate(promisedOn)} stays promised until the desk has looked at it again`]
    : offers;
}

function eventWords(events: readonly DeclaredEvent[]): string {
  return events.map((event) => eventTitles[event]).join(', ') || 'none';
}

/** Other units of the same aircraft that are here too: the event is theirs as well. */
async function neighbours(tx: Tx, { id, aircraftId }: PlannedWorkOrder): Promise<string[]> {
  if (!aircraftId) return [];
  const others = await tx.workOrder.findMany({
    where: { aircraftId, id: { not: id }, closedAt: null },
    select: { number: true, model: { select: { designation: true } } },
    orderBy: { number: 'asc' },
    take: 10,
  });
  return others.map(
    ({ number, model }) =>
      `${model.designation} of the same aircraft is here on ${number}: declare the event there too.`,
  );
}
