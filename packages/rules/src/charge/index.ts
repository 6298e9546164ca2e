import { Decimal } from 'decimal.js';
import { RuleError } from '../errors/index.ts';
import { askedFirst, Exact, otherUnit, readDecimal, refuseImpossible, unitText } from '../reading/index.ts';
import { convert } from '../units/index.ts';

export const pressureUnits = ['psi', 'kPa'] as const;
export const temperatureUnits = ['degF', 'degC'] as const;
type PressureUnit = (typeof pressureUnits)[number];
type TemperatureUnit = (typeof temperatureUnits)[number];

/** Temperature against pressure, coldest first; decimal text. */
export type ChargeTable = readonly { readonly at: string; readonly pressure: string }[];

/** What a revision asks of an air or gas charge. */
export interface ChargeSpec {
  readonly medium: string;
  readonly unit: PressureUnit;
  readonly temperatureUnit: TemperatureUnit;
  readonly table: ChargeTable;
  /** Either way from the pressure of the table. */
  readonly tolerance: string;
  /** How long the gas comes to temperature before the gauge is read. */
  readonly settleMinutes: number;
}

/** The charge as it was read. */
export interface ChargeRead {
  readonly medium: string;
  readonly temperature: string;
  readonly settledMinutes: string;
  readonly pressure: string;
}

/**
 * Between two rows of a table, in a straight line. Outside of it there is no answer: a charge is never extrapolated.
 *
 * Source: linear interpolation, any handbook of mathematics (Abramowitz and Stegun 25.2.1, from memory). Errors: RuleError
 * `outside-table`; `bad-table` for fewer than two rows or rows that do not ascend.
 *
 * @example interpolate([{ at: '35', pressure: '5.628' }, { at: '40', pressure: '7.384' }], '38') // 6.6816
 */
export function interpolate(table: ChargeTable, temperature: string): Decimal {
  const at = readDecimal(temperature, { what: 'The temperature', path: 'temperature' });
  const rows = table.map((row) => ({ at: new Exact(row.at), pressure: new Exact(row.pressure) }));
  if (rows.length < 2 || rows.some((row, index) => rows[index - 1]?.at.gte(row.at)))
    throw new RuleError('bad-table', 'A table has two rows at least, coldest first.', 'table');
  const next = rows.findIndex((row) => row.at.gte(at));
  const [before, after] = [rows[Math.max(next - 1, 0)], rows[next]];
  if (!before || !after || before.at.gt(at))
    throw new RuleError('outside-table', `${temperature} lies outside of the table.`, 'temperature');
  if (before === after) return after.pressure;
  const share = at.minus(before.at).times(after.pressure.minus(before.pressure));
  return before.pressure.plus(share.div(after.at.minus(before.at)));
}

/**
 * The pressure asked for at a temperature: as the table gives it, and the band around it rounded inwards, so that a reading
 * inside as shown is inside.
 *
 * Errors: as {@link interpolate}; one that another unit would explain says so.
 *
 * @example chargeWanted({ table: 60 → 175, 80 → 183, tolerance: '3', … }, '70') // { wanted: '179.0', low: '176.0', high: '182.0' }
 */
export function chargeWanted(spec: ChargeSpec, temperature: string): { wanted: string; low: string; high: string } {
  const { wanted, low, high } = bandAt(spec, temperature);
  const texts = [spec.tolerance, ...spec.table.map(({ pressure }) => pressure)];
  const decimals = 1 + Math.max(...texts.map((text) => text.split('.')[1]?.length ?? 0));
  return {
    wanted: wanted.toFixed(decimals, Decimal.ROUND_HALF_EVEN),
    low: low.toFixed(decimals, Decimal.ROUND_CEIL),
    high: high.toFixed(decimals, Decimal.ROUND_FLOOR),
  };
}

function bandAt(spec: ChargeSpec, temperature: string): { wanted: Decimal; low: Decimal; high: Decimal } {
  const wanted = inTable(spec, temperature);
  return { wanted, low: wanted.minus(spec.tolerance), high: wanted.plus(spec.tolerance) };
}

/** The table's pressure, or a refusal that says which temperatures it has and whether another unit would be among them. */
function inTable({ table, temperatureUnit }: ChargeSpec, temperature: string): Decimal {
  try {
    return interpolate(table, temperature);
  } catch (error) {
    if (!(error instanceof RuleError) || error.code !== 'outside-table') throw error;
    const [least, most] = [table[0]?.at ?? '', table.at(-1)?.at ?? ''];
    const other = temperatureUnits.find(
      (unit) =>
        unit !== temperatureUnit && within(convert(Number(temperature), unit, temperatureUnit), { least, most }),
    );
    const doubt = other ? ` ${temperature} ${unitText(other)} would be inside: look at the unit.` : '';
    const why = `${temperature} ${unitText(temperatureUnit)} lies outside of the table, which goes from ${least} to ${most}: it is not charged at this temperature.`;
    throw new RuleError('outside-table', `${why}${doubt}`, 'temperature');
  }
}
const within = (value: number, { least, most }: { least: string; most: string }) =>
  value >= Number(least) && value <= Number(most);

export interface ChargeVerdict {
  readonly good: boolean;
  readonly reasons: string[];
  readonly wanted: string;
}

/**
 * Whether a charge is the one the table asks for: the medium, the time to settle, the pressure at the temperature as read.
 *
 * Source: table, tolerance, medium and time are data of the revision; that a charge goes by temperature is common practice, no
 * source. Errors: as {@link chargeWanted}; `reading-impossible`, `not-a-number`.
 *
 * Caution: stored pressure injures; the current approved manual and the people licensed for it decide how it is charged.
 *
 * @example 70 degF, 180 psi, settled 30 of 30 min, tolerance 3 → { good: true, wanted: '179.0' }
 */
export function judgeCharge(read: ChargeRead, spec: ChargeSpec): ChargeVerdict {
  const pressure = readDecimal(read.pressure, { what: 'The pressure', path: 'pressure' });
  const settled = readDecimal(read.settledMinutes, { what: 'The time to settle', path: 'settledMinutes' });
  if (settled.lt(0)) throw new RuleError('not-a-number', 'A time to settle is not below zero.', 'settledMinutes');
  const band = bandAt(spec, read.temperature);
  const isIn = pressure.gte(band.low) && pressure.lte(band.high);
  if (!isIn)
    refuseImpossible(pressure, band, { what: `The pressure of ${read.pressure} ${spec.unit}`, path: 'pressure' });
  const shown = chargeWanted(spec, read.temperature);
  const other = isIn ? undefined : otherUnit(pressure, band, askedFirst(pressureUnits, spec.unit));
  const doubt = other ? ` ${read.pressure} ${other} would be inside: look at the unit of the gauge.` : '';
  const reasons = [
    ...(read.medium === spec.medium ? [] : [`Charged with ${read.medium}; ${spec.medium} is asked for.`]),
    ...(settled.lt(spec.settleMinutes)
      ? [`Read after ${read.settledMinutes} min; it settles for ${spec.settleMinutes} min first.`]
      : []),
    ...(isIn
      ? []
      : [
          `${read.pressure} ${spec.unit}; ${shown.low} to ${shown.high} is asked for at ${read.temperature} ${unitText(spec.temperatureUnit)}.${doubt}`,
        ]),
  ];
  return { good: reasons.length === 0, reasons, wanted: shown.wanted };
}

/** A charge as it stands beside its signature. */
export function sayCharge(read: ChargeRead, spec: ChargeSpec, { wanted }: Pick<ChargeVerdict, 'wanted'>) {
  return [
    { name: 'charged with', value: read.medium },
    { name: 'temperature', value: `${read.temperature} ${unitText(spec.temperatureUnit)}` },
    { name: 'settled', value: `${read.settledMinutes} min` },
    { name: 'pressure by the table', value: `${wanted} ± ${spec.tolerance} ${spec.unit}` },
    { name: 'pressure', value: `${read.pressure} ${spec.unit}` },
  ];
}
