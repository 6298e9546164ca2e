import { Decimal } from 'decimal.js';
import {
  limitText,
  type StaticEntry,
  type StaticPlaced,
  type StaticReading,
  type StaticReadings,
  type StaticSpec,
  type StaticVerdict,
  shown,
} from './static-sheet.ts';

const heavySides: Readonly<Record<string, string>> = {
  ...{ right: 'the right is heavy', left: 'the left is heavy', level: 'level' },
  ...{ 'blade-1': 'blade 1 is heavy', opposite: 'the side opposite blade 1 is heavy' },
};

/**
 * A static balance in words, as it is shown and printed beside the signature.
 *
 * @example { name: 'blade 1 up, after', value: 'the right is heavy by 3 g-in (0.6 at 5)' }
 */
export function sayStatic(
  entry: StaticEntry,
  spec: StaticSpec,
  { expected, isOdd }: Pick<StaticVerdict, 'expected' | 'isOdd'>,
): { name: string; value: string }[] {
  const expectation = `${shown(expected.mass)} ${spec.unit} at ${Math.round(expected.angle)}°`;
  return [
    ...sayReadings(entry.before, 'before', spec),
    { name: 'weights before', value: sayPlaced(entry.found) },
    { name: 'weights now', value: sayPlaced(entry.placed) },
    ...sayReadings(entry.after, 'after', spec),
    {
      name: 'by the weights',
      value: isOdd ? `${expectation} is expected: look at sides and places again` : expectation,
    },
    { name: 'limit', value: sayLimit(spec) },
  ];
}

function sayReadings({ vertical, horizontal }: StaticReadings, when: string, { unit }: StaticSpec) {
  return [
    { name: `blade 1 up, ${when}`, value: sayReading(vertical, unit) },
    { name: `blade 1 level, ${when}`, value: sayReading(horizontal, unit) },
  ];
}

function sayReading({ heavy, weight, radius }: StaticReading, unit: string): string {
  const side = heavySides[heavy] ?? heavy;
  if (heavy === 'level' || weight === undefined || radius === undefined) return side;
  return `${side} by ${new Decimal(weight).times(radius).toFixed()} ${unit} (${weight} at ${radius})`;
}

function sayPlaced(placed: readonly StaticPlaced[]): string {
  if (placed.length === 0) return 'none';
  return placed.map(({ place, part, pieces }) => `${place}: ${pieces} × ${part}`).join(', ');
}

function sayLimit({ limit, unit }: StaticSpec): string {
  if (limit.by === 'manual') return `${limit.moment} ${unit} each, by the manual`;
  const grade = `ISO 21940-11 G ${limit.grade}, ${limit.massKg} kg at ${limit.rpm} rpm`;
  return `${limitText({ limit, unit })} ${unit} in all, ${grade}`;
}
