import type { Reads } from '../../platform/database/reads.ts';

export type Names = Awaited<ReturnType<typeof namesFor>>;

/** Who these people are, as lists name them: one read for all. */
export async function namesFor({ models }: Reads, ids: readonly string[]) {
  const rows = await models.person.findMany({
    where: { id: { in: [...new Set(ids)] } },
    select: { id: true, displayName: true, initials: true },
  });
  return (id: string) => rows.find((one) => one.id === id) ?? { id, displayName: 'Unknown person', initials: '?' };
}
