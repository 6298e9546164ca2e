import type { AnglesAsked } from './asked.ts';
import type { AngleReading, AnglesVerdict } from './judge-angles.ts';

/** Angles as they stand beside their signature, a line a stop. */
export function sayAngles(
  { cycles, readings }: { readonly cycles: number; readonly readings: readonly AngleReading[] },
  asked: AnglesAsked,
  { spreads }: Pick<AnglesVerdict, 'spreads'>,
) {
  return [
    { name: 'reference station', value: `${asked.station.at} ${asked.station.unit}` },
    { name: 'cycled on air', value: `${cycles} times, ${asked.cycles} asked for` },
    ...asked.stops.map(({ stop, low, high, spread }) => {
      const read = readings.filter((one) => one.stop === stop).toSorted((one, other) => one.blade - other.blade);
      const between = spreads.find((one) => one.stop === stop)?.spread ?? '0';
      const most = spread === undefined ? '' : `, ${spread}° allowed`;
      return {
        name: `${stop} stop`,
        value: `${read.map(({ blade, angle }) => `blade ${blade} ${angle}°`).join(', ')} (${low}° to ${high}°), spread ${between}°${most}`,
      };
    }),
  ];
}
