import { enterData } from '../apps/server/src/modules/field-balance/enter-data.command.ts';
import { enterHardware } from '../apps/server/src/modules/field-balance/enter-hardware.command.ts';
import { fitWeights } from '../apps/server/src/modules/field-balance/fit-weights.command.ts';
import { planBalance } from '../apps/server/src/modules/field-balance/plan-balance.command.ts';
import { recordRun } from '../apps/server/src/modules/field-balance/record-run.command.ts';
import { releaseBalance } from '../apps/server/src/modules/field-balance/release-balance.command.ts';
import { signBalance } from '../apps/server/src/modules/field-balance/sign-balance.command.ts';
import { signSetUp } from '../apps/server/src/modules/field-balance/sign-set-up.command.ts';
import type { Calendar } from './calendar.ts';
import { balanceData, balanceHardware, courserRotor, pinnaceRotor, readingsWith, sheet } from './data/field-balance.ts';
import type { Reference } from './reference.ts';
import { presigned, type SeedRun } from './run.ts';

type Known = Pick<Reference, 'parts' | 'models'>;

/** What a balance on the aircraft needs on record: places and limits by model, and what pieces weigh. */
export async function seedBalanceData(run: SeedRun, { parts, models }: Known): Promise<void> {
  for (const [number, mass] of Object.entries(balanceHardware))
    await run.run(enterHardware, { partId: parts.get(number) as string, mass }, { by: 'parts' });
  for (const [designation, data] of Object.entries(balanceData)) {
    const input = { modelId: models.get(designation) as string, ...data, signature: presigned };
    await run.run(enterData, input, { by: 'inspector' });
  }
}

/** One that is finished, and one in the middle of its runs. */
export function seedFieldBalances(run: SeedRun, calendar: Calendar, ids: Reference): void {
  calendar.on(-214, 15, () => courser(run, ids));
  calendar.on(-1, 17, () => pinnace(run, ids));
}

interface Asked {
  readonly customer: string;
  readonly registration: string;
  readonly serial: string;
  readonly airport: string;
  readonly plannedOn: string;
  readonly reason: string;
}

/** Planned by the desk and set up at the aircraft; the version goes up by one with each step. */
async function setUp(run: SeedRun, ids: Reference, asked: Asked) {
  const { customer, registration, serial, ...words } = asked;
  const unit = await run.reads.serializedItem.findFirstOrThrow({ where: { serial } });
  const named = { customerId: ids.customers.get(customer), aircraftId: ids.aircraft.get(registration) };
  const planning = { ...(named as { customerId: string; aircraftId: string }), unitId: unit.id, ...words };
  const { id: fieldBalanceId } = await run.run(planBalance, planning, { by: 'desk' });
  const instrumentId = ids.instruments.get('VIB-01') as string;
  const signed = { fieldBalanceId, ...sheet, instrumentId, signature: presigned };
  await run.run(signSetUp, signed, { by: 'tech', version: 1 });
  return fieldBalanceId;
}

async function courser(run: SeedRun, ids: Reference): Promise<void> {
  const fieldBalanceId = await setUp(run, ids, {
    ...{ customer: 'BRACKEN', registration: 'ZZ-BMD', serial: 'QA1287', airport: 'Brackenmoor Field, hangar 2' },
    ...{ plannedOn: run.day(-214), reason: 'Balance after the overhauled propeller was installed' },
  });
  const by = 'tech';
  const readings = (...weights: (readonly [number, number])[]) => readingsWith(courserRotor, weights);
  await run.run(recordRun, { fieldBalanceId, kind: 'baseline', readings: readings() }, { by, version: 2 });
  const trial = { mass: '12', place: 'H1' };
  const tried = { fieldBalanceId, kind: 'trial' as const, readings: readings([12, 0]), trial };
  await run.run(recordRun, tried, { by, version: 3 });
  const lotOf = async (number: string) =>
    (await run.reads.lot.findFirstOrThrow({ where: { part: { number } }, orderBy: { receivedAt: 'asc' } })).code;
  const [bolt, washer] = [await lotOf('Q-DW-B2'), await lotOf('Q-DW-W1')];
  const weights = [
    { place: 'H2', lotCode: bolt, pieces: 2 },
    { place: 'H3', lotCode: washer, pieces: 2 },
  ];
  await run.run(fitWeights, { fieldBalanceId, weights }, { by, version: 4 });
  const after = { fieldBalanceId, kind: 'check' as const, readings: readings([16.8, 30], [4.2, 60]) };
  await run.run(recordRun, after, { by, version: 5 });
  await run.run(signBalance, { fieldBalanceId, remarks: '', signature: presigned }, { by, version: 6 });
  await run.run(releaseBalance, { fieldBalanceId, signature: presigned }, { by: 'inspector', version: 7 });
}

/** The trial is run; which weights go where is the next question. */
async function pinnace(run: SeedRun, ids: Reference): Promise<void> {
  const fieldBalanceId = await setUp(run, ids, {
    ...{ customer: 'OXLIP', registration: 'ZZ-OVA', serial: 'QC3107', airport: 'Oxlip Valley strip' },
    ...{ plannedOn: run.day(-1), reason: 'Members report a shake in cruise' },
  });
  const by = 'tech';
  const baseline = { fieldBalanceId, kind: 'baseline' as const, readings: readingsWith(pinnaceRotor, []) };
  await run.run(recordRun, baseline, { by, version: 2 });
  const trial = { mass: '10', place: 'H6' };
  const readings = readingsWith(pinnaceRotor, [[10, 225]]);
  await run.run(recordRun, { fieldBalanceId, kind: 'trial', readings, trial }, { by, version: 3 });
}
