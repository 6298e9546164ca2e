import { closeLot } from '../apps/server/src/modules/peening/close-lot.command.ts';
import { signLot } from '../apps/server/src/modules/peening/sign-lot.command.ts';
import { startLot } from '../apps/server/src/modules/peening/start-lot.command.ts';
import type { Calendar } from './calendar.ts';
import { presigned, type SeedRun } from './run.ts';
import type { Visit } from './visit.ts';

type Blades = readonly (readonly [serial: string, position: string])[];

interface LotSeed {
  /** From today: peened on, closed on. */
  readonly peened: number;
  readonly closed: number;
  readonly blades: Blades;
  /** Thousandths of an inch by area, before and after. */
  readonly opening: readonly [leading: number, trailing: number, shank: number];
  readonly closing: readonly [leading: number, trailing: number, shank: number];
  /** How many steps each blade goes on after the peening, before anyone reads the closing strips. */
  readonly onwards?: readonly number[];
}

const of = (serial: string, ...blades: number[]): Blades => blades.map((n) => [serial, `blade-${n}`]);

/** Lots of the last fortnight. Closing strips of the last one failed, with its blades at three places by then. */
const lots: readonly LotSeed[] = [
  { peened: -10, closed: -10, blades: of('QF2188', 1, 2), opening: [9.3, 7.4, 10.3], closing: [9.4, 7.3, 10.4] },
  { peened: -9, closed: -9, blades: of('QF2188', 3, 4), opening: [9.2, 7.2, 10.4], closing: [9.3, 7.3, 10.2] },
  { peened: -5, closed: -5, blades: of('QF2240', 3, 4), opening: [9.4, 7.3, 10.3], closing: [9.2, 7.1, 10.3] },
  { peened: -4, closed: -4, blades: of('QF2251', 3, 4), opening: [9.3, 7.2, 10.2], closing: [9.1, 7.0, 10.1] },
  {
    ...{ peened: -3, closed: -1, blades: [...of('QF2240', 1, 2), ...of('QF2251', 1, 2)] },
    ...{ opening: [9.2, 7.1, 10.3], closing: [8.8, 5.7, 10.0], onwards: [2, 1, 1, 0] },
  },
];

const areas = ['leading edge', 'trailing edge', 'shank'] as const;

/** Peens the blades of these visits between strips, lot by lot. */
export function seedPeeningLots(run: SeedRun, calendar: Calendar, visits: readonly Visit[]): void {
  for (const [index, lot] of lots.entries()) {
    let lotId = '';
    calendar.on(lot.peened, 19.5 + index * 0.01, async () => {
      lotId = await peen(run, visits, lot);
    });
    calendar.on(lot.closed, 20.5 + index * 0.01, async () => {
      const { version } = await run.reads.peeningLot.findUniqueOrThrow({ where: { id: lotId } });
      const input = { lotId, closing: strips(lot.closing), signature: presigned };
      await run.run(closeLot, input, { by: 'maren', version });
    });
  }
}

async function peen(run: SeedRun, visits: readonly Visit[], lot: LotSeed): Promise<string> {
  const steps = [];
  for (const [serial, position] of lot.blades) steps.push(await upToPeening(run, visitOf(visits, serial), position));
  const setup = await run.reads.peeningSetup.findFirstOrThrow({ orderBy: { qualifiedAt: 'desc' } });
  const begun = { setupId: setup.id, stepIds: steps.map(({ id }) => id), opening: strips(lot.opening) };
  const looked = { nozzlesChecked: true, mediaChecked: true, signature: presigned } as const;
  const { id: lotId, version } = await run.run(startLot, { ...begun, ...looked }, { by: 'maren' });
  const coverage = areas.map((area) => ({ area, percent: 100 }));
  await run.run(signLot, { lotId, coverage, signature: presigned }, { by: 'maren', version });
  for (const [index, { travelerId }] of steps.entries()) {
    const { signer } = visitOf(visits, lot.blades[index]?.[0] ?? '');
    const next = await signer.openSteps(travelerId, ['repair']);
    for (const step of next.slice(0, lot.onwards?.[index] ?? 1)) await signer.signOne(step);
  }
  return lotId;
}

/** Signs the repair of one blade up to its peening, and answers that step. */
async function upToPeening(run: SeedRun, { workOrderId, signer }: Visit, position: string) {
  const { id } = await run.reads.traveler.findFirstOrThrow({ where: { workOrderId, position } });
  for (const step of await signer.openSteps(id, ['repair'])) {
    if (step.peening !== null) return step;
    await signer.signOne(step);
  }
  throw new Error(`Nothing is peened at ${position}`);
}

function visitOf(visits: readonly Visit[], serial: string): Visit {
  const visit = visits.find(({ seed }) => seed.serial === serial);
  if (!visit) throw new Error(`There is no visit of ${serial}`);
  return visit;
}

/** Each strip was a little bowed before; its net arc height is computed from both readings. */
function strips(thousandths: readonly number[]) {
  return areas.map((area, index) => {
    const [before, net] = [index % 2 === 0 ? 0.2 : -0.1, thousandths[index] ?? 0];
    const inches = (value: number) => (value / 1000).toFixed(4);
    return { area, before: inches(before), after: inches(net + before), batch: 'A-1182' };
  });
}
