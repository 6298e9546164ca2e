import { Decimal } from 'decimal.js';
import { RuleError } from '../errors/index.ts';
import { implausible } from '../limits/index.ts';
import { convert, type Unit } from '../units/index.ts';
import { type FunctionTestAsked, limitsInWords, type ValueAsked, valuesAsked } from './asked.ts';

/** A function test as it was made. Values by the path of {@link valuesAsked}, decimal text as read. */
export interface FunctionTestMade {
  readonly medium?: string | undefined;
  readonly cycles?: number | undefined;
  readonly values: readonly { readonly of: string; readonly value: string }[];
}

export interface FunctionTestVerdict {
  readonly good: boolean;
  /** Which value, and by how much. */
  readonly reasons: string[];
}

/**
 * A function test against what the revision asks: every value once, with the medium asked for and after as many cycles. `accepted` has each
 * value with the limits it is accepted by. Computed in decimals, bounds inclusive.
 *
 * Source: which values show that a built propeller works is common practice, no source; the figures are data of the revision. Errors:
 * RuleError `medium-wrong`, `cycles-short`, `value-missing`, `value-unknown`, `below-zero`, `reading-impossible`, `not-a-number`, each at
 * its place.
 *
 * @example judgeFunctionTest(made, asked) // { good: false, reasons: ['Blade 2 play fore-and-aft: 0.014 in; at most 0.010 in is asked for, 0.004 in too much.'] }
 */
export function judgeFunctionTest(
  made: FunctionTestMade,
  asked: FunctionTestAsked,
  accepted: readonly ValueAsked[] = valuesAsked(asked),
): FunctionTestVerdict {
  refuseOtherTest(made, asked);
  refuseIncomplete(made.values, accepted);
  const reasons = accepted.flatMap((one) => outside(one, readOf(made, one)) ?? []);
  return { good: reasons.length === 0, reasons };
}

/** Another medium or fewer cycles is another test: it proves nothing either way. */
function refuseOtherTest({ medium, cycles }: FunctionTestMade, { leak }: FunctionTestAsked): void {
  if (!leak) return;
  if (medium === undefined || !leak.media.includes(medium))
    throw new RuleError(
      'medium-wrong',
      `Tested with ${medium ?? 'nothing'}; ${leak.media.join(' or ')} is asked for.`,
      'medium',
    );
  if (cycles === undefined || !Number.isSafeInteger(cycles) || cycles < leak.cycles)
    throw new RuleError(
      'cycles-short',
      `Cycled ${cycles ?? 0} times under pressure; ${leak.cycles} are asked for: cycle it on, and read again.`,
      'cycles',
    );
}

function refuseIncomplete(values: FunctionTestMade['values'], asked: readonly ValueAsked[]): void {
  const known = new Set(asked.map(({ path }) => path));
  const seen = new Set<string>();
  values.forEach(({ of, value }, index) => {
    const path = `values/${index}/value`;
    if (!known.has(of) || seen.has(of))
      throw new RuleError('value-unknown', `${of} is entered twice or not asked for.`, path);
    seen.add(of);
    const one = asked.find((each) => each.path === of) as ValueAsked;
    const why = whyImpossible(one, value);
    if (why) throw new RuleError(why.code, `${capital(one.name)} ${value} ${one.unit} is ${why.words}`, path);
  });
  refuseMoreLost(values);
  const missing = asked.filter(({ path }) => !seen.has(path)).map(({ name }) => name);
  if (missing.length > 0) throw new RuleError('value-missing', `Not measured: ${missing.join(', ')}.`, 'values');
}

/** No more is lost than there was. */
function refuseMoreLost(values: FunctionTestMade['values']): void {
  const lost = values.findIndex(({ of }) => of === 'leak/lost');
  const pressure = values.find(({ of }) => of === 'leak/pressure');
  if (pressure && Number(values[lost]?.value ?? 0) > Number(pressure.value))
    throw new RuleError('reading-impossible', 'More pressure is lost than there was.', `values/${lost}/value`);
}

/**
 * Nothing of this test is below zero. Play, friction and travel that are twenty times off are of another unit; a pressure above its band is,
 * where it would be inside it in another unit. A pressure below its band and a loss of all of it are what a bad leak looks like.
 */
export function whyImpossible(
  { path, low, high, unit }: ValueAsked,
  value: string,
): { code: string; words: string } | undefined {
  if (!/^-?\d{1,12}(\.\d{1,8})?$/.test(value)) return { code: 'not-a-number', words: 'no decimal number' };
  const read = Number(value);
  if (read < 0) return { code: 'below-zero', words: 'below zero, which nothing of this test can be' };
  const words = path.startsWith('leak/')
    ? path === 'leak/pressure' && swapped(read, { low, high, unit })
    : implausible(read, {
        ...(low === undefined ? {} : { low: Number(low) }),
        ...(high === undefined ? {} : { high: Number(high) }),
      });
  return words ? { code: 'reading-impossible', words } : undefined;
}

const pressures: readonly Unit[] = ['psi', 'kPa'];

function swapped(read: number, { low, high, unit }: Pick<ValueAsked, 'low' | 'high' | 'unit'>): string | undefined {
  if (high === undefined || read <= Number(high) || !pressures.includes(unit as Unit)) return undefined;
  const other = pressures.find((one) => {
    const inside = convert(read, one, unit as Unit);
    return one !== unit && inside >= Number(low ?? 0) && inside <= Number(high);
  });
  return other && `above the test pressure, and ${read} ${other} would be inside: look at the unit of the gauge`;
}

/** Why one value is not good, in words; undefined where it is. */
export function outside(one: ValueAsked, value: string): string | undefined {
  const read = new Decimal(value);
  const under = one.low === undefined ? new Decimal(0) : new Decimal(one.low).minus(read);
  const over = one.high === undefined ? new Decimal(0) : read.minus(one.high);
  const by = Decimal.max(under, over);
  if (by.lte(0)) return undefined;
  const side = under.gt(0) ? 'too little' : 'too much';
  return `${capital(one.name)}: ${value} ${one.unit}; ${limitsInWords(one)} is asked for, ${by} ${one.unit} ${side}.`;
}

function readOf({ values }: FunctionTestMade, { path }: ValueAsked): string {
  return values.find(({ of }) => of === path)?.value ?? '';
}

function capital(name: string): string {
  return name.charAt(0).toUpperCase() + name.slice(1);
}
