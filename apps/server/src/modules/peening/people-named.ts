import type { Reads } from '../../platform/database/reads.ts';

/** Who is meant by these ids, as the contract names a person. */
export async function peopleNamed(reads: Reads, ids: readonly (string | null)[]) {
  const rows = await reads.models.person.findMany({
    where: { id: { in: [...new Set(ids.flatMap((id) => id ?? []))] } },
    select: { id: true, displayName: true, initials: true },
  });
  return (id: string) => rows.find((one) => one.id === id) ?? { id, displayName: 'Unknown person', initials: '?' };
}
