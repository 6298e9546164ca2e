import { Problem } from '@hubwright/contracts/problems';
import { found } from '../../platform/command/version.ts';
import type { Tx } from '../../platform/database/client.ts';
import { type Kit, withWork } from './kit.ts';

/** These kits by id, all of them open, in the order they are named. */
export async function kitsWithLines(tx: Tx, kitIds: readonly string[]): Promise<Map<string, Kit>> {
  const rows = await tx.kit.findMany({ where: { id: { in: [...kitIds] } }, include: withWork });
  const known = new Map(rows.map((kit) => [kit.id, kit]));
  const kits = kitIds.map((id) => found(known.get(id) ?? null, 'This kit'));
  const closed = kits.find(({ state }) => state !== 'open');
  if (closed) throw new Problem('kit-closed', `${closed.code} is ${closed.state}`, { kit: closed.code });
  return new Map(kits.map((kit) => [kit.id, kit]));
}
