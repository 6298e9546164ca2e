import type { FieldBalanceData, FieldSheet } from '@hubwright/contracts/field-balance/shapes';
import { canonicalJson } from '@hubwright/rules/chain';
import { sensorAfterSensor } from './answer.ts';
import { doubtsOf } from './doubts.ts';
import { dataOf, type EffectiveRun, effectiveRuns, setUpOf, type WholeBalance } from './field-balance.ts';
import { ownOf, standingOf } from './weights.ts';

/** The range of the model's data a speed lies in. */
export function rangeAt({ ranges }: FieldBalanceData, rpm: number) {
  return ranges.find(({ fromRpm, toRpm }) => rpm >= fromRpm && rpm <= toRpm);
}

/** The newest run without a trial weight, if it was read with the weights as they stand. */
export function lastRun(balance: WholeBalance): EffectiveRun | undefined {
  const last = effectiveRuns(balance).at(-1);
  const own = ownOf(standingOf(balance));
  return last && last.kind !== 'trial' && canonicalJson(last.weights) === canonicalJson(own) ? last : undefined;
}

/** What stands above its limit in the last run, at either sensor, in words. */
export function aboveLimit(balance: WholeBalance, run: EffectiveRun): string[] {
  if (!balance.spec) return [];
  const data = dataOf(balance.spec);
  const names = sensorsOf(setUpOf(balance)?.sheet);
  return sensorAfterSensor(run.readings).flatMap(({ rpm, sensor, amplitude }) => {
    const limit = rangeAt(data, rpm)?.limit;
    const where = names ? `${names[sensor]}: ` : '';
    return limit !== undefined && Number(amplitude) <= Number(limit)
      ? []
      : [`${where}${amplitude} ${data.unit} at ${rpm} rpm; the limit is ${limit ?? 'not known'}`];
  });
}

/** The places of both sensors of a sheet that has two. */
export function sensorsOf(sheet: Pick<FieldSheet, 'sensorPlace' | 'secondSensor'> | undefined) {
  return sheet?.secondSensor ? ([sheet.sensorPlace, sheet.secondSensor.sensorPlace] as const) : undefined;
}

/** What the next signature would be refused for. */
export function openItems(balance: WholeBalance): string[] {
  switch (balance.state) {
    case 'planned':
      return ['The sheet before any run is not signed'];
    case 'set-up':
      return ['The baseline is not run'];
    case 'runs':
    case 'weights-fitted': {
      const last = lastRun(balance);
      return [
        ...(last ? aboveLimit(balance, last) : ['Nothing was read since the weights changed or the trial came off']),
        ...doubtsOf(balance),
      ];
    }
    case 'balanced':
      return [...doubtsOf(balance), 'An inspector approves it with the log entry'];
    default:
      return [];
  }
}
