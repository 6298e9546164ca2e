import { RuleError } from '../errors/index.ts';
import { convert, type Unit } from '../units/index.ts';
import type { Band } from './hold.ts';
import type { ChartReading } from './reading.ts';

const scales: Readonly<Record<string, Unit>> = { '°F': 'degF', degF: 'degF', '°C': 'degC', degC: 'degC' };
const names = { degF: '°F', degC: '°C' } as const;

/**
 * Doubts a chart whose highest temperature is outside its band as it stands and would be inside if the recorder wrote the other
 * scale, unless somebody has looked at the recorder again (`unitChecked`). A unit that is no temperature known here is not doubted.
 *
 * Source: common practice, no source; the same doubt as readings of a governor meet. Errors: RuleError `unit-doubtful`.
 */
export function refuseOtherScale(
  chart: readonly ChartReading[],
  { low, high, unit }: Band & { readonly unit: string },
  unitChecked: boolean | undefined,
): void {
  const scale = scales[unit.trim()];
  if (!scale || unitChecked) return;
  const other = scale === 'degF' ? 'degC' : 'degF';
  const isIn = (temperature: number) => temperature >= low && temperature <= high;
  const highest = Math.max(...chart.map(({ temperature }) => temperature));
  if (isIn(highest) || !isIn(convert(highest, other, scale))) return;
  throw new RuleError(
    'unit-doubtful',
    `${highest} ${unit} is the highest and outside ${low} to ${high}; ${highest} ${names[other]} would be inside: look at the unit of the recorder.`,
    'chart',
  );
}
