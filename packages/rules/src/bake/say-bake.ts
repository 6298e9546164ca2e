import type { BakeSpec, BakeVerdict } from './judge-bake.ts';

/** A bake as it stands beside its signature: instants in milliseconds in, ISO out. */
export function sayBake(
  { platedAt, startedAt, spec }: { platedAt: number; startedAt: number; spec: BakeSpec },
  { holdMinutes }: Pick<BakeVerdict, 'holdMinutes'>,
) {
  return [
    { name: 'plating ended', at: new Date(platedAt).toISOString() },
    { name: 'bake began', at: new Date(startedAt).toISOString() },
    { name: `held within ${spec.low} to ${spec.high} ${spec.unit}`, value: `${Math.floor(holdMinutes)} min` },
  ];
}
