import type { FieldReadings, StandingWeight } from '@hubwright/contracts/field-balance/shapes';
import { found } from '../../platform/command/version.ts';
import { dataOf, type EffectiveRun, effectiveRuns, setUpOf, type WholeBalance } from './field-balance.ts';
import { standingOf } from './weights.ts';

/** What the technician signs, and what log entry and record are made of. */
export interface BalancedContent {
  readonly number: string;
  readonly aircraft: string;
  readonly propeller: { readonly model: string; readonly serial: string };
  readonly source: string;
  readonly procedure: string;
  readonly unit: string;
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
  const { model, serial } = balance.unit;
  return {
    ...{ number: balance.number, aircraft: balance.aircraft.registration, source: spec.source, remarks },
    propeller: { model: model?.designation ?? '', serial: serial ?? '' },
    ...{ procedure: setUp.sheet.procedure, unit: dataOf(spec).unit },
    before: effectiveRuns(balance)[0]?.readings ?? last.readings,
    after: last.readings,
    weights: standingOf(balance),
    takenOff: setUp.sheet.found.filter(({ stays }) => !stays).map(({ place, mass }) => ({ place, mass })),
    instrument: { id, tag, calibrationDueOn },
  };
}

const said = (readings: FieldReadings, unit: string) =>
  readings.map(({ rpm, amplitude, phase }) => `${amplitude} ${unit} at ${phase}° and ${rpm} rpm`).join(', ');

/** The text for the aircraft's log: what was done, before and after, weights by place, by which data and instrument. */
export function logEntry(content: BalancedContent): string {
  const { propeller, unit, before, after, weights, takenOff, instrument } = content;
  const fitted = weights.map((weight) =>
    weight.found
      ? `${weight.place} ${weight.mass} g as found`
      : `${weight.place} ${weight.pieces} × ${weight.partNumber} (${weight.mass} g)`,
  );
  return [
    `Propeller ${propeller.model}, serial ${propeller.serial}, balanced dynamically on ${content.aircraft} by ${content.source}, ${content.procedure}.`,
    `Before: ${said(before, unit)}. After: ${said(after, unit)}.`,
    fitted.length > 0 ? `Dynamic weights standing: ${fitted.join('; ')}.` : 'No dynamic weights stand.',
    ...(takenOff.length > 0
      ? [`Taken off: ${takenOff.map(({ place, mass }) => `${place} ${mass} g`).join('; ')}.`]
      : []),
    `Instrument ${instrument.tag}, in calibration until ${instrument.calibrationDueOn}. Order ${content.number}.`,
    ...(content.remarks === '' ? [] : [content.remarks]),
  ].join(' ');
}
