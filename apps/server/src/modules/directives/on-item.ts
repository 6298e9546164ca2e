import type { Operation } from '@hubwright/contracts/operation';
import { Problem } from '@hubwright/contracts/problems';
import type { DirectiveOutcome } from '@hubwright/rules/directives';
import type { Context, Subject } from '../../platform/command/command.ts';
import { found } from '../../platform/command/version.ts';
import { fromDbDate, toDbDate } from '../../platform/database/dates.ts';
import { type HeldAuthorisation, writeSignOff } from '../people/public.ts';
import { standingsOnVisit } from './visit.ts';

type Named = { readonly workOrderId: string; readonly directiveId: string; readonly itemId: string };
type Writing = Pick<Context<Operation>, 'tx' | 'now' | 'today' | 'actor' | 'entryId' | 'newId' | 'signOffs'>;

/** How a directive stands for an item of a unit that is here, for whoever records something of it. */
export async function onItem({ tx, today }: Writing, named: Named) {
  const workOrder = found(await tx.workOrder.findUnique({ where: { id: named.workOrderId } }), 'This work order');
  if (workOrder.releasedAt || workOrder.closedAt)
    throw new Problem('wrong-state', `${workOrder.number} has been released or closed`);
  const directive = found(await tx.directive.findUnique({ where: { id: named.directiveId } }), 'This directive');
  if (directive.withdrawnOn) throw new Problem('directive-withdrawn', `${directive.number} was withdrawn`);
  const { standings, unit, records } = await standingsOnVisit(tx, { workOrderId: workOrder.id, today });
  const standing = standings.find((one) => one.directive.id === directive.id && one.itemId === named.itemId);
  const item = [unit.unit, ...unit.parts].find(({ itemId }) => itemId === named.itemId);
  if (!standing || !item) throw new Problem('directive-not-open', `${directive.number} does not concern this part`);
  return { workOrder, standing, item, records };
}

export interface Recorded {
  readonly outcome: DirectiveOutcome;
  readonly method: string;
  readonly terminating: boolean;
  readonly doneOn: string;
  readonly hoursTenths: number | 'unknown';
  readonly deferredUntil: string | null;
  readonly meaning: string;
  readonly authorisation: HeldAuthorisation;
}

/** Signs and keeps one record; answers how the directive stands after it. */
export async function recordOnItem(
  context: Writing,
  { workOrder, standing, item }: Awaited<ReturnType<typeof onItem>>,
  { meaning, authorisation, doneOn, hoursTenths, deferredUntil, ...said }: Recorded,
) {
  const { tx, now, today, actor, entryId, newId } = context;
  const { id: directiveId, kind, number, revision, title, issuedOn } = standing.directive;
  const id = newId();
  const signOff = await writeSignOff(context, {
    ...{ workOrderId: workOrder.id, revisionId: workOrder.revisionId, meaning, authorisation },
    subject: { kind: 'directive', id: directiveId },
    result: said.outcome,
    content: {
      ...{ workOrder: workOrder.number, directive: { kind, number, revision, title, issuedOn: fromDbDate(issuedOn) } },
      item: { name: item.name, partNumber: item.partNumber, serial: item.serial },
      ...{ ...said, doneOn, hoursTenths, deferredUntil },
    },
  });
  await tx.directiveCompliance.create({
    data: {
      ...{ ...said, id, directiveId, itemId: item.itemId, workOrderId: workOrder.id, entryId },
      ...{ doneOn: toDbDate(doneOn), deferredUntil: deferredUntil === null ? null : toDbDate(deferredUntil) },
      hoursTenths: hoursTenths === 'unknown' ? null : hoursTenths,
      ...{ signOffId: signOff.id, recordedBy: actor.personId, recordedAt: now },
    },
  });
  const after = await standingsOnVisit(tx, { workOrderId: workOrder.id, today });
  const standingNow = after.standings.find((one) => one.directive.id === directiveId && one.itemId === item.itemId);
  return {
    reply: { id, version: 1, state: standingNow?.state ?? ('not-applicable' as const) },
    subjects: [
      { kind: 'work-order', id: workOrder.id },
      { kind: 'directive', id: directiveId },
      { kind: 'unit', id: item.itemId },
    ] satisfies [Subject, ...Subject[]],
    authorisation: { ...authorisation },
    facts: { number, revision, itemId: item.itemId, outcome: said.outcome, doneOn, hoursTenths, deferredUntil },
  };
}
