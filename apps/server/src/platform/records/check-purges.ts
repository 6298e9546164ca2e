import { canonicalJson } from '@hubwright/rules/chain';
import type { Digest } from './anchor.ts';
import { signatureHolds } from './shop-key.ts';
import type { HeadRow, RecordSource } from './source.ts';

/** What a purge's text says. */
export interface PurgeBody {
  readonly kind: 'purge';
  readonly id: string;
  readonly at: string;
  /** Whose decision it was, and by which policy. */
  readonly by: string;
  readonly policy: string;
  readonly what: string;
  /** The chains destroyed, and where each ended. */
  readonly chains: readonly HeadRow[];
  /** What is left of the rows each anchor covered. */
  readonly rows: readonly (Digest & { readonly anchor: number; readonly table: string })[];
  readonly entries: number;
  readonly files: readonly string[];
  readonly key: string;
}

/** What may be missing, by proof: chains by subject, digests by table and anchor. */
export interface Purged {
  readonly chains: ReadonlyMap<string, HeadRow>;
  readonly rows: ReadonlyMap<string, Digest>;
}

export const rowsKey = (table: string, anchor: number) => `${table} ${anchor}`;

/** Reads the proofs whose signature holds; any other is a fault and excuses nothing. */
export async function checkPurges(
  source: RecordSource,
  keys: ReadonlyMap<string, { publicKey: string }>,
  fault: (place: string, reason: string) => void,
): Promise<Purged> {
  const chains = new Map<string, HeadRow>();
  const rows = new Map<string, Digest>();
  for (const row of await source.purges()) {
    const body = parsed(row.body);
    const key = keys.get(row.keyId);
    const holds = body && key && body.id === row.id && signatureHolds(key.publicKey, row.body, row.signature);
    if (!holds) {
      fault(`purge ${row.id}`, 'the proof was changed, or not signed by the shop');
      continue;
    }
    for (const head of body.chains) chains.set(`${head.kind} ${head.id}`, head);
    for (const left of body.rows) rows.set(rowsKey(left.table, left.anchor), left);
  }
  return { chains, rows };
}

function parsed(text: string): PurgeBody | undefined {
  try {
    const body = JSON.parse(text) as PurgeBody;
    return canonicalJson(body) === text ? body : undefined;
  } catch {
    return undefined;
  }
}
