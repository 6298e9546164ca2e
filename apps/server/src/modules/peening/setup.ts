import type { PeeningSpec } from '@hubwright/contracts/manuals/measures';
import { Problem } from '@hubwright/contracts/problems';
import { found } from '../../platform/command/version.ts';
import type { Tx } from '../../platform/database/client.ts';

export type Setup = Awaited<ReturnType<typeof currentSetup>>;
type QualifiedArea = { readonly name: string; readonly strip: string; readonly intensity: number };

/** Throws `setup-not-current` or `setup-doubtful`: only the newest qualification counts, and none after its strips failed. */
export async function currentSetup(tx: Tx, setupId: string) {
  const setup = found(
    await tx.peeningSetup.findUnique({ where: { id: setupId }, include: { machine: true } }),
    'This qualification',
  );
  const { machine, machineId, program } = setup;
  const newest = await tx.peeningSetup.findFirst({ where: { machineId, program }, orderBy: { qualifiedAt: 'desc' } });
  if (newest?.id !== setup.id || !machine.inService)
    throw new Problem('setup-not-current', `${machine.code}, ${program}, was qualified anew since`);
  const failed = await tx.peeningLot.findFirst({
    where: { setupId: setup.id, state: { in: ['held', 'redone'] } },
    orderBy: { closedAt: 'desc' },
  });
  if (failed) throw new Problem('setup-doubtful', `Closing strips of ${failed.number} failed`, { lot: failed.number });
  return setup;
}

/** Every area the parts ask for is qualified with its own strip, and its intensity lies within their band. */
export function refuseUnqualified({ machine, program, mediaSize, areas }: Setup, spec: PeeningSpec): void {
  if (mediaSize.toUpperCase() !== spec.mediaSize.toUpperCase())
    throw new Problem(
      'media-wrong',
      `${machine.code}, ${program}, runs with ${mediaSize}; the parts ask for ${spec.mediaSize}`,
    );
  const qualified = areas as unknown as readonly QualifiedArea[];
  for (const { name, strip, low, high } of spec.areas) {
    const area = qualified.find((one) => one.name === name && one.strip === strip);
    if (!area || area.intensity < Number(low) || area.intensity > Number(high))
      throw new Problem('area-not-qualified', `${name}, ${strip} strip, ${low} to ${high}: not by ${program}`, {
        area: name,
      });
  }
}
