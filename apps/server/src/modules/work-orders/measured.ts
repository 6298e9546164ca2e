import type { Reads } from '../../platform/database/reads.ts';

/** A dimension as it was measured last on a traveler, or in one phase of it. */
export interface Measured {
  readonly travelerId: string;
  readonly key: string;
  readonly value: string;
  readonly pass: boolean;
  readonly signedAt: Date;
  readonly isAsFound: boolean;
}

/** Names one dimension at one place of a part, the same on every visit. */
export function dimensionKey(dimension: string, station: string | null, zone: string | null): string {
  return [dimension, station === null ? '' : String(Number(station)), zone ?? ''].join(' ');
}

/** Every dimension signed on the travelers of a work order and not superseded since, in the order of signing. */
export async function measuredOf(
  tx: Pick<Reads['models'], 'measurement' | 'signOff'>,
  workOrderId: string,
): Promise<Measured[]> {
  const rows = await tx.measurement.findMany({
    where: { measure: { dimension: { not: null } }, signOff: { workOrderId, countersignsId: null } },
    include: {
      measure: { include: { step: { select: { travelerId: true, phase: true } } } },
      signOff: { select: { id: true, signedAt: true } },
    },
    orderBy: [{ signOff: { signedAt: 'asc' } }, { id: 'asc' }],
    take: 5_000,
  });
  const newer = await tx.signOff.findMany({
    where: { workOrderId, supersedesId: { not: null } },
    select: { supersedesId: true },
  });
  const superseded = new Set(newer.map(({ supersedesId }) => supersedesId));
  return rows
    .filter(({ signOffId }) => !superseded.has(signOffId))
    .map(({ measure, value, pass, signOff }) => ({
      ...{ travelerId: measure.step.travelerId, value, pass, signedAt: signOff.signedAt },
      key: dimensionKey(measure.dimension ?? '', measure.station, zoneName(measure.zone)),
      isAsFound: measure.step.phase === 'evaluation',
    }));
}

export function zoneName(zone: unknown): string | null {
  return (zone as { name?: string } | null)?.name ?? null;
}
