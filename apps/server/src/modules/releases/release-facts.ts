import { found } from '../../platform/command/version.ts';
import type { Tx } from '../../platform/database/client.ts';
import { partsWithin, TimesOnRecord } from '../units/public.ts';
import { documentSets } from '../work-orders/public.ts';

/** A signature of a step that stands: not superseded by a newer one. */
export interface StandingSignOff {
  readonly stepId: string;
  readonly personId: string;
  readonly person: string;
  readonly result: string;
  readonly revisionId: string;
  readonly instrumentId: string | null;
  readonly performedAt: Date;
  /** The trainee's sign-off that this one, the supervisor's, stands beside. */
  readonly countersignsId: string | null;
}

/** All that a release is decided on and made from. */
export type ReleaseFacts = Awaited<ReturnType<typeof releaseFacts>>;
export type ReleaseStep = ReleaseFacts['steps'][number];

/** A work order with all that its release is about. */
const whole = {
  customer: true,
  aircraft: true,
  model: true,
  unit: true,
  revision: { include: { manual: true } },
  holds: { where: { liftedAt: null }, orderBy: { placedAt: 'asc' } },
  travelers: { orderBy: { number: 'asc' }, include: { steps: { orderBy: { sequence: 'asc' } }, item: true } },
  findings: { orderBy: { number: 'asc' }, include: { traveler: true, parts: { include: { part: true } } } },
  kits: true,
} as const;

export async function releaseFacts(tx: Tx, workOrderId: string) {
  const workOrder = found(
    await tx.workOrder.findUnique({
      where: { id: workOrderId },
      include: whole,
    }),
    'This work order',
  );
  const documents = await documentSets(tx, workOrder);
  const shop = await tx.shopProfile.findUnique({ where: { id: 1 } });
  const installations = await tx.installation.findMany({
    where: { parentId: workOrder.unitId, toDate: null },
    orderBy: { position: 'asc' },
    include: { item: true },
  });
  const within = await partsWithin(tx, [workOrder.unitId]);
  const signOffs = await standingSignOffs(tx, workOrderId);
  const steps = workOrder.travelers.flatMap((traveler) =>
    traveler.steps.map((step) => {
      const of = signOffs.filter(({ stepId }) => stepId === step.id);
      const signOff = of.find(({ countersignsId }) => countersignsId === null);
      const supervisorId = of.find(({ countersignsId }) => countersignsId !== null)?.personId ?? null;
      return { ...step, traveler, signOff, supervisorId };
    }),
  );
  return {
    workOrder,
    documents: documents.goesBy,
    shop: found(shop, 'The shop profile'),
    installations,
    /** The same with the parts of parts, and how long each has flown. */
    within,
    times: await TimesOnRecord.of(tx, [workOrder.unitId, ...within.map(({ itemId }) => itemId)]),
    signOffs,
    steps,
  };
}

export type UnpaidFinding = Awaited<ReturnType<typeof unpaidFindings>>[number];

async function standingSignOffs(tx: Tx, workOrderId: string): Promise<StandingSignOff[]> {
  const rows = await tx.signOff.findMany({
    where: { workOrderId, stepId: { not: null } },
    orderBy: { signedAt: 'asc' },
  });
  const superseded = new Set(rows.map(({ supersedesId }) => supersedesId));
  const people = await tx.person.findMany({
    where: { id: { in: [...new Set(rows.map(({ personId }) => personId))] } },
    select: { id: true, displayName: true },
  });
  const names = new Map(people.map(({ id, displayName }) => [id, displayName]));
  return rows
    .filter(({ id, countersignsId }) => !superseded.has(countersignsId ?? id))
    .flatMap((row) =>
      row.stepId === null ? [] : [{ ...row, stepId: row.stepId, person: names.get(row.personId) ?? '' }],
    );
}

/** Findings that cost money and that no approved quote pays for; `isDeclined` when the customer said no and nothing newer is asked. */
export async function unpaidFindings(tx: Tx, facts: ReleaseFacts) {
  const costly = facts.workOrder.findings.filter(({ labourMinor, parts }) => labourMinor > 0 || parts.length > 0);
  const asked = await tx.quoteLine.findMany({
    where: { findingId: { in: costly.map(({ id }) => id) } },
    select: { findingId: true, quote: { select: { state: true } } },
  });
  const statesOf = (id: string) => asked.filter(({ findingId }) => findingId === id).map(({ quote }) => quote.state);
  return costly
    .map(({ id, number }) => ({ id, number, states: statesOf(id) }))
    .filter(({ states }) => !states.includes('approved'))
    .map(({ id, number, states }) => ({
      id,
      number,
      isDeclined: states.includes('declined') && !states.some((state) => ['draft', 'sent', 'silent'].includes(state)),
    }));
}
