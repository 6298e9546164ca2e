import type { Tx } from '../../platform/database/client.ts';

/** For each part: itself first, then what may stand in for it, in order of preference; not transitive. */
export async function standIns(tx: Tx, partIds: readonly string[]): Promise<(partId: string) => string[]> {
  const rows = await tx.partAlternate.findMany({
    where: { partId: { in: [...new Set(partIds)] } },
    orderBy: { preference: 'asc' },
    select: { partId: true, useId: true },
  });
  const uses = new Map<string, string[]>();
  for (const { partId, useId } of rows) uses.set(partId, [...(uses.get(partId) ?? []), useId]);
  return (partId) => [partId, ...(uses.get(partId) ?? [])];
}
