import type { fieldBalanceOperations } from '@hubwright/contracts/field-balance/operations';
import { planesOf } from '@hubwright/contracts/field-balance/planes';
import type { FieldBalanceData } from '@hubwright/contracts/field-balance/shapes';
import { Problem } from '@hubwright/contracts/problems';
import { didNothing } from '@hubwright/rules/balance';
import type { Context } from '../../platform/command/command.ts';
import { type Counted, ruleRun, scatterOf } from './answer.ts';
import { type EffectiveRun, effectiveRuns, type WholeBalance } from './field-balance.ts';
import { rangeAt } from './judged.ts';
import { ownOf, refuseTooHeavy, standingOf, trialAt } from './weights.ts';

type Recording = Context<typeof fieldBalanceOperations.recordFieldRun>;

/** What a run is checked against: the balance, its data and the runs before it. */
interface About {
  readonly balance: WholeBalance;
  readonly data: FieldBalanceData;
  readonly sheet: Counted['sheet'];
  readonly before: readonly EffectiveRun[];
}

/** The reading that is put right: of this sheet, not put right before, with a reason. */
export function corrected({ input }: Recording, balance: WholeBalance): EffectiveRun | undefined {
  if (input.supersedesId === undefined) return undefined;
  if (input.reason === undefined)
    throw new Problem('invalid-input', 'Say what was wrong', {}, [
      { pointer: '/reason', detail: 'Say what was wrong' },
    ]);
  const run = effectiveRuns(balance).find(({ row }) => row.id === input.supersedesId);
  if (!run) throw new Problem('run-superseded', 'It was put right before, or belongs to an older sheet');
  return run;
}

/** Throws `run-out-of-turn`: a baseline with nothing fitted since, a trial with its weight, a check after the baseline. */
export function refuseOutOfTurn(
  { input }: Recording,
  { balance, before }: About,
  wrong: EffectiveRun | undefined,
): void {
  const refuse = (detail: string): never => {
    throw new Problem('run-out-of-turn', detail);
  };
  if (wrong && wrong.kind !== input.kind) refuse(`That was a ${wrong.kind} run`);
  if (input.kind === 'trial' && input.trial === undefined)
    throw new Problem('invalid-input', 'Say which trial weight sat where', {}, [
      { pointer: '/trial', detail: 'A trial run has a trial weight' },
    ]);
  if (wrong) return;
  const last = before.at(-1);
  if (input.kind !== 'baseline' && !last) refuse('First the baseline is run');
  if (input.kind === 'baseline' && before.some(({ kind }) => kind !== 'baseline'))
    refuse('The baseline is over; run a check with the weights as they stand');
  if (input.kind === 'baseline' && last && JSON.stringify(last.weights) !== JSON.stringify(ownOf(standingOf(balance))))
    refuse('Weights were fitted since the baseline; this is a check');
}

type Refusal = 'speeds-differ' | 'sensors-differ' | 'speed-outside' | 'reading-impossible';

/** Throws `speeds-differ`, `sensors-differ`, `speed-outside` or `reading-impossible`, pointing at the reading. */
export function refuseReadings({ input }: Recording, { data, sheet, before }: About): void {
  const refuse = (type: Refusal, pointer: string, detail: string): never => {
    throw new Problem(type, detail, {}, [{ pointer, detail }]);
  };
  const first = before[0]?.readings;
  if (first && first.length !== input.readings.length)
    refuse('speeds-differ', '/readings', `The baseline was read at ${first.map(({ rpm }) => rpm).join(', ')} rpm`);
  for (const [at, { rpm, amplitude, second }] of input.readings.entries()) {
    const range = rangeAt(data, rpm);
    if (!range) refuse('speed-outside', `/readings/${at}/rpm`, `${rpm} rpm is in no range of the data`);
    const asked = first?.[at]?.rpm;
    if (asked !== undefined && Math.abs(rpm - asked) > 0.02 * asked)
      refuse('speeds-differ', `/readings/${at}/rpm`, `The baseline was read at ${asked} rpm`);
    if (sheet.secondSensor && !second)
      refuse('sensors-differ', `/readings/${at}/second`, `Read ${sheet.secondSensor.sensorPlace} too`);
    if (!sheet.secondSensor && second)
      refuse('sensors-differ', `/readings/${at}/second`, 'The sheet has one sensor only');
    const read = [
      [amplitude, `/readings/${at}/amplitude`],
      ...(second ? [[second.amplitude, `/readings/${at}/second/amplitude`] as const] : []),
    ] as const;
    // Twenty times the limit is another unit, as for every measure (rules/limits/implausible).
    for (const [value, pointer] of read)
      if (range && Number(value) > 20 * Number(range.limit))
        refuse('reading-impossible', pointer, `${value} ${data.unit} is over twenty times the limit`);
  }
}

/** Throws `plane-unused` for a place in the second plane under a sheet with one sensor. */
export function refuseUnusedPlane({ sheet }: Pick<About, 'sheet'>, plane: 0 | 1, pointer: string): void {
  if (plane === 0 || sheet.secondSensor) return;
  const detail = 'It is in the second plane; the sheet has one sensor';
  throw new Problem('plane-unused', detail, {}, [{ pointer, detail }]);
}

/** A trial weight within every limit that changes something. Throws `place-unknown`, `plane-unused`, `too-heavy`, `no-influence`. */
export function refuseTrial(
  { input }: Recording,
  { balance, data, sheet, before }: About,
  run: Pick<EffectiveRun, 'readings' | 'trial' | 'weights'>,
): void {
  if (!run.trial) return;
  const { plane } = trialAt(data, run.trial);
  refuseUnusedPlane({ sheet }, plane, '/trial/place');
  const mass = Number(run.trial.mass);
  const place = run.trial.place ?? planesOf(data)[plane]?.places[0]?.name ?? '';
  const limits = run.trial.place === undefined ? clamped(data) : data;
  refuseTooHeavy(limits, [...standingOf(balance), { place, pieces: 1, mass }], '/trial/mass');
  const all = [...before, run].map((one) => ruleRun({ data, sheet }, one));
  if (!didNothing(all, plane, scatterOf(data, all))) return;
  throw new Problem('no-influence', `${run.trial.mass} g changed nothing beyond scatter`, { trial: input.trial }, [
    { pointer: '/trial/mass', detail: 'Use a heavier trial weight' },
  ]);
}

/** At an angle between places it is a clamped weight: only the limits of all count. */
function clamped(data: FieldBalanceData): FieldBalanceData {
  const free = { mostPieces: 999, mostPlaces: 999 };
  const { secondPlane } = data;
  return {
    ...{ ...data, mostPerPlace: data.mostInAll, ...free },
    ...(secondPlane ? { secondPlane: { ...secondPlane, mostPerPlace: secondPlane.mostInAll, ...free } } : {}),
  };
}
