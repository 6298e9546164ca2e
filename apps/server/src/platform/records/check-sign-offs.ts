import { createHash } from 'node:crypto';
import { canonicalJson } from '@hubwright/rules/chain';
import type { Purged } from './check-purges.ts';
import type { RecordSource, SigningEntry, SignOffRow } from './source.ts';

/** Every signature still says what was signed: its content has its hash, and the chained entry names the same hash. None is gone. */
export async function checkSignOffs(
  source: RecordSource,
  purged: Purged['chains'],
  fault: (place: string, reason: string) => void,
): Promise<number> {
  let count = 0;
  for await (const row of source.signOffs()) {
    count += 1;
    const reason = misfit(row);
    if (reason) fault(`signature ${row.id}`, reason);
  }
  const missing = new Map<string, string>();
  for await (const entry of source.signingEntries())
    for (const id of goneFrom(entry, purged)) missing.set(id, entry.id);
  for (const [id, entry] of missing) fault(`signature ${id}`, `it is gone; entry ${entry} names it`);
  return count;
}

/** Signatures that went with a purged chain by proof are not missed. */
function goneFrom({ body, signOffs }: SigningEntry, purged: Purged['chains']): string[] {
  const gone = namedIn(body).filter(({ id }) => !signOffs.has(id));
  if (gone.length === 0 || subjectsOf(body).some((subject) => purged.has(subject))) return [];
  return gone.map(({ id }) => id);
}

function subjectsOf(entry: string): string[] {
  const { subjects = [] } = JSON.parse(entry) as { subjects?: { kind: string; id: string }[] };
  return subjects.map(({ kind, id }) => `${kind} ${id}`);
}

function misfit({ id, content, contentHash, entry }: SignOffRow): string | undefined {
  if (createHash('sha256').update(content).digest('hex') !== contentHash)
    return 'what was signed is not what its hash says';
  if (!isCanonical(content)) return 'what was signed is not kept as it was hashed';
  if (entry === undefined) return undefined;
  if (entry === null) return 'the record entry of this signature is gone';
  const named = namedIn(entry).find((one) => one.id === id)?.contentHash ?? earlierNamedIn(entry);
  if (named === undefined) return 'the record entry does not name this signature';
  return named === contentHash ? undefined : 'the record entry names another content';
}

function isCanonical(text: string): boolean {
  try {
    return canonicalJson(JSON.parse(text)) === text;
  } catch {
    return false;
  }
}

/** Entries of balances on the aircraft and of stock named the hash of what was signed among the facts before they named signatures like all others. */
function earlierNamedIn(entry: string): string | undefined {
  try {
    const { signed, facts } = JSON.parse(entry) as {
      signed?: { signOffs?: unknown[] };
      facts?: { contentHash?: unknown };
    };
    return signed && !signed.signOffs && typeof facts?.contentHash === 'string' ? facts.contentHash : undefined;
  } catch {
    return undefined;
  }
}

function namedIn(entry: string): { id: string; contentHash: string }[] {
  try {
    return (
      (JSON.parse(entry) as { signed?: { signOffs?: { id: string; contentHash: string }[] } }).signed?.signOffs ?? []
    );
  } catch {
    return [];
  }
}
