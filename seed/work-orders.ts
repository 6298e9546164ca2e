import type { SourceClass } from '@hubwright/contracts/inventory/operations';
import { changeCustomer } from '../apps/server/src/modules/customers/change-customer.command.ts';
import { disposeFinding } from '../apps/server/src/modules/findings/dispose-finding.command.ts';
import { failStep } from '../apps/server/src/modules/findings/fail-step.command.ts';
import { raiseFinding } from '../apps/server/src/modules/findings/raise-finding.command.ts';
import { declineQuote } from '../apps/server/src/modules/quotes/decline-quote.command.ts';
import { sendChaser } from '../apps/server/src/modules/quotes/send-chaser.command.ts';
import type { Calendar } from './calendar.ts';
import { quillon2Blade } from './data/manuals/quillon-2-blade.ts';
import { type Milestone, milestones, type Trouble, type VisitSeed } from './data/visits.ts';
import { finished } from './data/visits-finished.ts';
import { inHouse } from './data/visits-in-house.ts';
import { seedRevision } from './manuals.ts';
import { seedPeeningLots } from './peening-lots.ts';
import type { Reference } from './reference.ts';
import { presigned, type SeedRun } from './run.ts';
import { Visit } from './visit.ts';

/** When a milestone is reached, as a share of the days in house. */
const pace: Record<Milestone, number> = {
  received: 0,
  'looked-at': 0.03,
  'estimate-sent': 0.06,
  'evaluation-approved': 0.14,
  teardown: 0.18,
  evaluated: 0.3,
  'quote-sent': 0.36,
  approved: 0.5,
  repaired: 0.68,
  pulled: 0.76,
  built: 0.88,
  released: 0.95,
  shipped: 1,
  closed: 1,
};

/** The evening before today: nothing of the seed may lie after a real now. */
const yesterday = -1;

/** Every visit of the last year, and what goes wrong on some of them. */
export function seedWorkOrders(run: SeedRun, calendar: Calendar, ids: Reference): void {
  const visits = [...finished, ...inHouse].map((seed) => new Visit(run, ids, seed));
  for (const [index, visit] of visits.entries()) {
    const { seed } = visit;
    const trouble = seed.trouble && troubles[seed.trouble];
    if (trouble?.instead) visit.reach[trouble.instead] = () => trouble.happens(visit);
    // Later milestones of one day come later; two units never share a moment.
    for (const [place, milestone] of milestones.slice(0, milestones.indexOf(seed.until) + 1).entries())
      calendar.on(dayOf(seed, milestone), 14 + place * 0.5 + index * 0.01, () => visit.reach[milestone]());
    if (!trouble || trouble.instead) continue;
    const day = Math.min(yesterday, dayOf(seed, seed.until) + (trouble.daysLater ?? 1));
    calendar.on(day, 21.5 + index * 0.01, () => trouble.happens(visit));
  }
  seedPeeningLots(run, calendar, visits);
  const content = quillon2Blade('3');
  const revised = { manual: 'QOM-201', designation: 'Q2C-72', revision: '3', issued: -4, content };
  calendar.on(-3, 13.2, () => seedRevision(run, ids, revised));
}

function dayOf(seed: VisitSeed, milestone: Milestone): number {
  return Math.min(yesterday, seed.received + Math.floor(pace[milestone] * seed.days));
}

interface TroubleSeed {
  /** A milestone that goes otherwise than usual; absent: it happens after the last. */
  readonly instead?: Milestone;
  readonly daysLater?: number;
  readonly happens: (visit: Visit) => Promise<unknown>;
}

const troubles: Record<Exclude<Trouble, 'identity-open'>, TroubleSeed> & { 'identity-open'?: never } = {
  'half-evaluated': { happens: (visit) => visit.signer.sign(visit.workOrderId, ['evaluation'], 3) },
  'half-repaired': { happens: (visit) => visit.signer.sign(visit.workOrderId, ['repair'], 2) },
  'hub-rejected': { instead: 'evaluated', happens: rejectHub },
  'blade-rejected': { instead: 'evaluated', happens: rejectBlade },
  'over-and-above': { happens: nickAfterTheQuote },
  'half-built': {
    happens: async (visit) => {
      await visit.kit.putTogether(0.6);
      await visit.signer.sign(visit.workOrderId, ['build'], 1);
    },
  },
  declined: { happens: decline },
  silent: { daysLater: 3, happens: remindOnce },
  unpaid: { happens: holdForPayment },
  'half-tested': { happens: testHalf },
};

/** On the bench since last evening: the high stop was out and is set, the rest waits for the morning. */
async function testHalf({ run, signer, workOrderId }: Visit): Promise<void> {
  const traveler = await run.reads.traveler.findFirstOrThrow({ where: { workOrderId, position: 'assembly' } });
  const [test] = await signer.openSteps(traveler.id, ['final']);
  if (test) await signer.bench.half(test.id);
}

/** Blade 3 is too narrow towards its tip: it is rejected, and its mates wait for a decision. */
async function rejectBlade(visit: Visit): Promise<void> {
  const { run, signer, workOrderId } = visit;
  const blade = await run.reads.traveler.findFirstOrThrow({ where: { workOrderId, position: 'blade-3' } });
  const steps = await signer.openSteps(blade.id, ['evaluation']);
  const measuring = steps.findIndex(({ kind }) => kind === 'measure');
  for (const step of steps.slice(0, measuring)) await signer.signOne(step);
  const step = steps[measuring] as (typeof steps)[number];
  const { by, input } = signer.entry(step);
  const tip = step.measures.find(({ name }) => name === 'width at 39 in');
  const values = input.values.map((one) => (one.measureId === tip?.id ? { ...one, value: '4.271' } : one));
  const found = {
    area: 'tip',
    damage: 'out-of-limits' as const,
    place: 'leading edge, station 39',
    description: 'Eroded below the width at 39 in over the last two inches',
    spot: { on: 'blade' as const, surface: 'face' as const, station: '39.0', chord: 'leading' as const },
  };
  const { id, version } = await run.run(failStep, { ...input, values, ...found }, { by });
  const decision = { findingId: id, disposition: 'reject' as const, signature: presigned };
  await run.run(disposeFinding, decision, { by: 'sunniva', version });
  await signer.sign(workOrderId, ['evaluation']);
}

/** A blade socket out of round: the hub is rejected, and the kit asks for a new one. */
async function rejectHub(visit: Visit): Promise<void> {
  const { run, signer, workOrderId } = visit;
  const hub = await run.reads.traveler.findFirstOrThrow({ where: { workOrderId, position: 'hub' } });
  const steps = await signer.openSteps(hub.id, ['evaluation']);
  const measuring = steps.findIndex(({ kind }) => kind === 'measure');
  for (const step of steps.slice(0, measuring)) await signer.signOne(step);
  const { by, input } = signer.entry(steps[measuring] as (typeof steps)[number]);
  const values = input.values.map((one, index) => (index === 1 ? { ...one, value: '4.1312' } : one));
  const found = {
    area: 'blade-socket',
    damage: 'deformed' as const,
    place: 'blade socket 2',
    description: 'Socket 2 is 0.0037 in over its limit and out of round',
  };
  const { id, version } = await run.run(failStep, { ...input, values, ...found }, { by });
  const parts = [{ partId: visit.ids.parts.get('Q301-61') as string, position: 'hub', quantity: 1 }];
  const decision = { findingId: id, disposition: 'reject' as const, parts, signature: presigned };
  await run.run(disposeFinding, decision, { by: 'sunniva', version });
  await signer.sign(workOrderId, ['evaluation']);
}

async function decline(visit: Visit): Promise<void> {
  const quote = await visit.openQuote('firm');
  const answer = { decidedByName: 'Jessamy Pellow', decidedAt: visit.run.now(), note: 'More than it is worth to us' };
  const input = { ...answer, quoteId: quote.id, path: 'return' as const };
  await visit.run.run(declineQuote, input, { by: 'desk', version: quote.version });
}

/** The first reminder went out; the next two are overdue. */
async function remindOnce(visit: Visit): Promise<void> {
  const quote = await visit.openQuote('firm');
  const chaser = await visit.run.reads.chaser.findFirstOrThrow({
    where: { quoteId: quote.id },
    orderBy: { dueOn: 'asc' },
  });
  const note = 'Left word with the assets desk';
  await visit.run.run(sendChaser, { chaserId: chaser.id, note }, { by: 'desk' });
}

async function holdForPayment(visit: Visit): Promise<void> {
  const customer = await visit.run.reads.customer.findUniqueOrThrow({ where: { code: visit.seed.customer } });
  const { id: customerId, version, name, contactName, email, phone, address } = customer;
  const acceptedSources = customer.acceptedSources as SourceClass[];
  const input = { customerId, name, contactName, email, phone, address, acceptedSources, unpaidHold: true };
  await visit.run.run(changeCustomer, input, { by: 'manager', version });
}

/** Found while blending, after the customer's yes: decided, priced and with the customer; its work waits. The kit is promised meanwhile. */
async function nickAfterTheQuote(visit: Visit): Promise<void> {
  const { run } = visit;
  const blade = await run.reads.traveler.findFirstOrThrow({
    where: { workOrderId: visit.workOrderId, position: 'blade-2' },
  });
  const found = {
    area: 'leading-edge',
    damage: 'nicked' as const,
    place: 'leading edge, 27 in',
    description: 'Nick under the old repair, 0.06 in deep',
  };
  const { id, version } = await run.run(raiseFinding, { travelerId: blade.id, ...found }, { by: 'tech' });
  const repair = { title: 'Blend nick at 27 in', process: 'blade-repair' as const, standardMinutes: 60 };
  const test = { title: 'Penetrant test at 27 in', process: 'non-destructive-test' as const, standardMinutes: 20 };
  const decision = {
    findingId: id,
    disposition: 'repair' as const,
    steps: [repair, test],
    labourMinor: 24_800,
    signature: presigned,
  };
  await run.run(disposeFinding, decision, { by: 'sunniva', version });
  await visit.offer('over-and-above');
  await visit.kit.reserve();
}
