import type { BakeSpec, BakeVerdict } from './judge-bake.ts';

/** A bake as it stands beside its signature: instants in milliseconds in, ISO out. `begun` is what was put on record at the oven. */
export function sayBake(
  bake: {
    platedAt: number;
    startedAt: number;
    spec: BakeSpec;
    begun?: { by: string; oven: string; lateReason: string | null } | undefined;
  },
  { holdMinutes }: Pick<BakeVerdict, 'holdMinutes'>,
) {
  const { platedAt, startedAt, spec, begun } = bake;
  const record = begun && [begun.by, begun.oven, begun.lateReason && `entered later: ${begun.lateReason}`];
  return [
    { name: 'plating ended', at: new Date(platedAt).toISOString() },
    { name: 'bake began', at: new Date(startedAt).toISOString() },
    {
      name: 'beginning',
      value: record ? `on record by ${record.filter(Boolean).join(', ')}` : 'as entered with the chart',
    },
    { name: `held within ${spec.low} to ${spec.high} ${spec.unit}`, value: `${Math.floor(holdMinutes)} min` },
  ];
}
