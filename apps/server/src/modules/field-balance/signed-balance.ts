import type { FieldReadings, StandingWeight } from '@hubwright/contracts/field-balance/shapes';
import { found } from '../../platform/command/version.ts';
import { sensorAfterSensor } from './answer.ts';
import { dataOf, type EffectiveRun, effectiveRuns, setUpOf, type WholeBalance } from './field-balance.ts';
import { sensorsOf } from './judged.ts';
import { standingOf } from './weights.ts';

/** What the technician signs, and what log entry and record are made of. */
export interface BalancedContent {
  readonly number: string;
  readonly aircraft: string;
  readonly propeller: { readonly model: string; readonly serial: string };
  readonly source: string;
  readonly procedure: string;
  readonly unit: string;
  /** Where both sensors sat; nothing where there was one. */
  readonly sensors?: readonly [string, string];
  readonly before: FieldReadings;
  readonly after: FieldReadings;
  readonly weights: readonly StandingWeight[];
  readonly takenOff: readonly { readonly place: string; readonly mass: string }[];
  readonly instrument: { readonly id: string; readonly tag: string; readonly calibrationDueOn: string };
  readonly remarks: string;
}

export function balancedContent(balance: WholeBalance, last: EffectiveRun, remarks: string): BalancedContent {
  const setUp = found(setUpOf(balance), 'The sheet of this balance');
  const spec = found(balance.spec, 'The data of this balance');
  const { instrument } = setUp.signature.content as unknown as { instrument: BalancedContent['instrument'] };
  const { id, tag, calibrationDueOn } = instrument;
  const sensors = sensorsOf(setUp.sheet);
  const { model, serial } = balance.unit;
  return {
    ...{ number: balance.number, aircraft: balance.aircraft.registration, source: spec.source, remarks },
    propeller: { model: model?.designation ?? '', serial: serial ?? '' },
    ...{ procedure: setUp.sheet.procedure, unit: dataOf(spec).unit },
    ...(sensors ? { sensors } : {}),
    before: effectiveRuns(balance)[0]?.readings ?? last.readings,
    after: last.readings,
    weights: standingOf(balance),
    takenOff: setUp.sheet.found.filter(({ stays }) => !stays).map(({ place, mass }) => ({ place, mass })),
    instrument: { id, tag, calibrationDueOn },
  };
}

function said(readings: FieldReadings, { unit, sensors }: Pick<BalancedContent, 'unit' | 'sensors'>): string {
  return sensorAfterSensor(readings)
    .map(({ rpm, sensor, amplitude, phase }) => {
      const where = sensors ? ` (${sensors[sensor]})` : '';
      return `${amplitude} ${unit} at ${phase}° and ${rpm} rpm${where}`;
    })
    .join(', ');
}

const placed = ({ plane, place }: StandingWeight) => (plane === undefined ? place : `${plane} ${place}`);

/** The text for the aircraft's log: what was done, before and after, weights by place, by which data and instrument. */
export function logEntry(content: BalancedContent): string {
  const { propeller, before, after, weights, takenOff, instrument } = content;
  const fitted = weights.map((weight) =>
    weight.found
      ? `${placed(weight)} ${weight.mass} g as found`
      : `${placed(weight)} ${weight.pieces} × ${weight.partNumber} (${weight.mass} g)`,
  );
  return [
    `Propeller ${propeller.model}, serial ${propeller.serial}, balanced dynamically on ${content.aircraft} by ${content.source}, ${content.procedure}.`,
    `Before: ${said(before, content)}. After: ${said(after, content)}.`,
    fitted.length > 0 ? `Dynamic weights standing: ${fitted.join('; ')}.` : 'No dynamic weights stand.',
    ...(takenOff.length > 0
      ? [`Taken off: ${takenOff.map(({ place, mass }) => `${place} ${mass} g`).join('; ')}.`]
      : []),
    `Instrument ${instrument.tag}, in calibration until ${instrument.calibrationDueOn}. Order ${content.number}.`,
    ...(content.remarks === '' ? [] : [content.remarks]),
  ].join(' ');
}
