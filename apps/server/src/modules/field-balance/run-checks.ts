import type { fieldBalanceOperations } from '@hubwright/contracts/field-balance/operations';
import type { FieldBalanceData } from '@hubwright/contracts/field-balance/shapes';
import { Problem } from '@hubwright/contracts/problems';
import { changeFor } from '@hubwright/rules/balance';
import { RuleError } from '@hubwright/rules/errors';
import type { Context } from '../../platform/command/command.ts';
import { ruleRun, scatterOf } from './answer.ts';
import { type EffectiveRun, effectiveRuns, setUpOf, type WholeBalance } from './field-balance.ts';
import { rangeAt } from './judged.ts';
import { ownOf, refuseTooHeavy, standingOf, trialAt } from './weights.ts';

type Recording = Context<typeof fieldBalanceOperations.recordFieldRun>;

/** What a run is checked against: the balance, its data and the runs before it. */
interface About {
  readonly balance: WholeBalance;
  readonly data: FieldBalanceData;
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

/** Throws `speeds-differ`, `speed-outside` or `reading-impossible`, pointing at the reading. */
export function refuseReadings({ input }: Recording, { data, before }: About): void {
  const refuse = (
    type: 'speeds-differ' | 'speed-outside' | 'reading-impossible',
    pointer: string,
    detail: string,
  ): never => {
    throw new Problem(type, detail, {}, [{ pointer, detail }]);
  };
  const first = before[0]?.readings;
  if (first && first.length !== input.readings.length)
    refuse('speeds-differ', '/readings', `The baseline was read at ${first.map(({ rpm }) => rpm).join(', ')} rpm`);
  for (const [at, { rpm, amplitude }] of input.readings.entries()) {
    const range = rangeAt(data, rpm);
    if (!range) refuse('speed-outside', `/readings/${at}/rpm`, `${rpm} rpm is in no range of the data`);
    const asked = first?.[at]?.rpm;
    if (asked !== undefined && Math.abs(rpm - asked) > 0.02 * asked)
      refuse('speeds-differ', `/readings/${at}/rpm`, `The baseline was read at ${asked} rpm`);
    // Twenty times the limit is another unit, as for every measure (rules/limits/implausible).
    if (range && Number(amplitude) > 20 * Number(range.limit))
      refuse(
        'reading-impossible',
        `/readings/${at}/amplitude`,
        `${amplitude} ${data.unit} is over twenty times the limit`,
      );
  }
}

/** A trial weight within every limit that changes something. Throws `place-unknown`, `too-heavy`, `no-influence`. */
export function refuseTrial(
  { input }: Recording,
  { balance, data, before }: About,
  run: Pick<EffectiveRun, 'readings' | 'trial' | 'weights'>,
): void {
  if (!run.trial) return;
  trialAt(data, run.trial);
  const standing = standingOf(balance);
  const mass = Number(run.trial.mass);
  const place = run.trial.place ?? data.places[0]?.name ?? '';
  // At an angle between places it is a clamped weight: only the limits of all count.
  const limits =
    run.trial.place === undefined ? { ...data, mostPerPlace: data.mostInAll, mostPieces: 999, mostPlaces: 999 } : data;
  refuseTooHeavy(limits, [...standing, { place, pieces: 1, mass }], '/trial/mass');
  const counted = { data, counting: setUpOf(balance)?.sheet.counting ?? data.counting };
  const all = [...before, run].map((one) => ruleRun(counted, one));
  try {
    changeFor(all, { standing: [], scatter: scatterOf(data, all) });
  } catch (error) {
    if (!(error instanceof RuleError) || error.code !== 'no-influence') throw error;
    throw new Problem('no-influence', `${run.trial.mass} g changed nothing beyond scatter`, { trial: input.trial }, [
      { pointer: '/trial/mass', detail: 'Use a heavier trial weight' },
    ]);
  }
}
