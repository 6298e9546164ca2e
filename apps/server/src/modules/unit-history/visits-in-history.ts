import type { WholeUnitHistory } from '@hubwright/contracts/units/unit-history-operations';
import { fromDbDate } from '../../platform/database/dates.ts';
import { grouped } from '../../platform/database/grouped.ts';
import type { Reads } from '../../platform/database/reads.ts';

type Visit = WholeUnitHistory['workOrders'][number];
type Names = ReadonlyMap<string, string>;

/** Of which item: a unit has all of its visits, a part only what has to do with itself. */
export interface HistoryOf {
  readonly itemId: string;
  readonly isUnit: boolean;
  readonly visits: readonly string[];
}

/** Each visit with its findings, the parts that were new, and every signature with the text that was signed. */
export async function visitsInHistory(models: Reads['models'], of: HistoryOf): Promise<Visit[]> {
  const rows = await models.workOrder.findMany({
    where: { id: { in: [...of.visits] } },
    orderBy: [{ receivedOn: 'asc' }, { number: 'asc' }],
    include: { customer: { select: { id: true, name: true } }, aircraft: { select: { registration: true } } },
  });
  const [findings, parts, signatures] = [
    await findingsOf(models, of),
    await partsOf(models, of),
    await signaturesOf(models, of),
  ];
  return rows.map((row) => ({
    ...{ id: row.id, number: row.number, customer: row.customer, aircraft: row.aircraft?.registration ?? null },
    ...{ scope: row.scope, stage: row.stage, reason: row.reason, receivedOn: fromDbDate(row.receivedOn) },
    shippedAt: row.shippedAt?.toISOString() ?? null,
    closedAt: row.closedAt?.toISOString() ?? null,
    findings: [...(findings.get(row.id) ?? [])].map(({ workOrderId: _, ...finding }) => finding),
    partsReplaced: [...(parts.get(row.id) ?? [])].map(({ workOrderId: _, ...part }) => part),
    signatures: [...(signatures.get(row.id) ?? [])],
  }));
}

async function findingsOf(models: Reads['models'], { itemId, isUnit, visits }: HistoryOf) {
  const rows = await models.finding.findMany({
    where: { workOrderId: { in: [...visits] }, ...(isUnit ? {} : { traveler: { itemId } }) },
    orderBy: { raisedAt: 'asc' },
    include: { traveler: { select: { itemId: true, position: true } } },
  });
  const findings = rows.map(({ traveler, ...row }) => ({
    ...{ id: row.id, workOrderId: row.workOrderId, number: row.number, itemId: traveler.itemId },
    ...{ position: traveler.position, area: row.area, damage: row.damage, place: row.place },
    ...{ description: row.description, disposition: row.disposition, dispositionNote: row.dispositionNote },
    raisedAt: row.raisedAt.toISOString(),
  }));
  return grouped(findings, ({ workOrderId }) => workOrderId);
}

/** As in a release: what is in the unit by the ledger and was not taken off it. */
async function partsOf(models: Reads['models'], { isUnit, visits }: HistoryOf) {
  const rows = isUnit
    ? await models.balance.findMany({
        where: {
          ...{ placeKind: 'unit', placeRef: { in: [...visits] }, onHand: { gt: 0 } },
          lot: { origin: { not: 'taken-off' } },
        },
        include: { lot: { include: { part: true } } },
        orderBy: { lot: { part: { number: 'asc' } } },
      })
    : [];
  const parts = rows.map(({ placeRef, lot, onHand }) => ({
    workOrderId: placeRef,
    ...{ lotId: lot.id, lot: lot.code, part: lot.part.number, description: lot.part.description, quantity: onHand },
  }));
  return grouped(parts, ({ workOrderId }) => workOrderId);
}

async function signaturesOf(models: Reads['models'], { itemId, isUnit, visits }: HistoryOf) {
  const rows = await models.signOff.findMany({
    where: {
      workOrderId: { in: [...visits] },
      ...(isUnit ? {} : { OR: [{ step: { traveler: { itemId } } }, { subjectId: itemId }] }),
    },
    orderBy: [{ signedAt: 'asc' }, { id: 'asc' }],
    include: { step: { select: { id: true, title: true, traveler: { select: { number: true } } } } },
  });
  const names = await namesOf(
    models,
    rows.map(({ personId }) => personId),
  );
  const signatures = rows.map(({ step, ...row }) => ({
    ...{ id: row.id, workOrderId: row.workOrderId, meaning: row.meaning, result: row.result },
    step: step && { id: step.id, title: step.title, traveler: step.traveler.number },
    person: { id: row.personId, displayName: names.get(row.personId) ?? '' },
    performedAt: row.performedAt.toISOString(),
    signedAt: row.signedAt.toISOString(),
    ...{ lateReason: row.lateReason, content: row.content, contentHash: row.contentHash },
    ...{ supersedesId: row.supersedesId, countersignsId: row.countersignsId },
  }));
  return grouped(signatures, ({ workOrderId }) => workOrderId);
}

export async function namesOf(models: Reads['models'], ids: readonly string[]): Promise<Names> {
  const people = await models.person.findMany({
    where: { id: { in: [...new Set(ids)] } },
    select: { id: true, displayName: true },
  });
  return new Map(people.map(({ id, displayName }) => [id, displayName]));
}
