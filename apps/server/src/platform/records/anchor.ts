import { createHash } from 'node:crypto';
import { canonicalJson } from '@hubwright/rules/chain';
import { type ShopKey, signText } from './shop-key.ts';
import type { AnchoredRow, AnchorRow, SealedRow } from './source.ts';

/** What an anchor's text says. Digests are SHA-256 (hex) over lines, each ended by a line feed. */
export interface AnchorBody {
  readonly kind: 'anchor';
  readonly sequence: number;
  readonly at: string;
  /** Hash of the anchor before; 64 zeros for the first. */
  readonly previous: string;
  readonly key: string;
  readonly heads: Digest;
  /** One per table whose rows are only added, over the rows written by the entries this anchor covers. */
  readonly rows: readonly (Digest & { readonly table: string; readonly columns: readonly string[] })[];
}
export interface Digest {
  readonly count: number;
  readonly digest: string;
}

export const noAnchor = '0'.repeat(64);

/** Counts and hashes lines as they stream by. */
export class Lines {
  private readonly hash = createHash('sha256');
  private count = 0;

  add(line: string): void {
    this.hash.update(`${line}\n`);
    this.count += 1;
  }

  end(): Digest {
    return { count: this.count, digest: this.hash.digest('hex') };
  }
}

export function headLine({ kind, id, after, sequence, hash }: AnchoredRow): string {
  return `${kind} ${id} ${after} ${sequence} ${hash}`;
}

/** Only the columns the anchor names: a column added later does not change what was anchored before. */
export function rowLine({ values }: SealedRow, columns: readonly string[]): string {
  return JSON.stringify(columns.map((column) => values[column] ?? null));
}

export function hashOfText(text: string): string {
  return createHash('sha256').update(text, 'utf8').digest('hex');
}

export function signAnchor(body: AnchorBody, key: ShopKey): AnchorRow {
  const text = canonicalJson(body);
  return {
    sequence: body.sequence,
    body: text,
    hash: hashOfText(text),
    keyId: key.id,
    signature: signText(key, text),
  };
}
