import { Problem } from '@hubwright/contracts/problems';
import { found, sameVersion } from '../../platform/command/version.ts';
import type { Tx } from '../../platform/database/client.ts';

/** The document a command acts on, at the version the caller saw, unless it was withdrawn. */
export async function openDocument(tx: Tx, id: string, expectedVersion: number | undefined) {
  const document = found(
    await tx.document.findUnique({ where: { id }, include: { issues: { where: { state: 'current' } } } }),
    'This document',
  );
  sameVersion(document.version, expectedVersion);
  if (document.withdrawnOn) throw new Problem('document-withdrawn', `${document.number} was withdrawn`);
  return document;
}

/** Throws `date-ahead`, pointing at the field. */
export function refuseAhead(date: string, field: string, today: string): void {
  if (date <= today) return;
  throw new Problem('date-ahead', `${date} is still to come`, {}, [
    { pointer: `/${field}`, detail: `${date} is still to come` },
  ]);
}

/** Throws `not-found` naming the first model that is none. */
export async function requireModels(tx: Tx, modelIds: readonly string[]): Promise<string[]> {
  const ids = [...new Set(modelIds)];
  const known = await tx.unitModel.findMany({ where: { id: { in: ids } }, select: { id: true } });
  const there = new Set(known.map(({ id }) => id));
  for (const [index, id] of ids.entries()) found(there.has(id) || null, `Model ${index + 1} of the list`);
  return ids;
}
