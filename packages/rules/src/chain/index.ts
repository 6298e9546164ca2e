import { sha256 } from '@noble/hashes/sha2.js';
import { bytesToHex, utf8ToBytes } from '@noble/hashes/utils.js';
import { RuleError } from '../errors/index.ts';
import { canonicalJson } from './canonical.ts';

export { canonicalJson };

/** One link: `hash` is SHA-256 (hex) of the canonical JSON of `{ sequence, previous, body }`. */
export type Entry = { sequence: number; previous: string; hash: string; body: unknown };
export type Verdict = { valid: true } | { valid: false; at: number; reason: string };

const FIRST_PREVIOUS = '0'.repeat(64);
const HASH = /^[0-9a-f]{64}$/;

/**
 * The next entry of a chain; `previous` is undefined for the first one (sequence 1, previous 64 zeros).
 *
 * Source: SHA-256 by FIPS 180-4 over RFC 8785 canonical JSON. Errors: RuleError `not-json` (body), `not-an-entry` (previous).
 *
 * @example append(undefined, { step: 'teardown' }).hash
 * // 'ca42ae99e6632a54a0660b2e3805d768b37f668dbcb6a9dcce86ee2c6237fc1a'
 */
export function append(previous: Entry | undefined, body: unknown): Entry {
  if (previous !== undefined) refuseMalformed(previous);
  const link = { sequence: (previous?.sequence ?? 0) + 1, previous: previous?.hash ?? FIRST_PREVIOUS };
  return { ...link, hash: hashOf({ ...link, body }), body };
}

/**
 * Walks a whole chain from its first entry and names the first one that does not fit (`at`: its index).
 * An empty chain is valid. A tail cut off leaves a shorter chain that is still valid: compare with an anchor
 * ({@link verifyAgainstAnchor}).
 *
 * Source: as {@link append}. Errors: RuleError `not-a-chain` when `entries` is no array; everything inside it is a verdict.
 *
 * @example verify([append(undefined, 'a')]) // { valid: true }
 */
export function verify(entries: Entry[]): Verdict {
  if (!Array.isArray(entries)) throw new RuleError('not-a-chain', 'A chain is a list of entries.', 'entries');
  let previous = FIRST_PREVIOUS;
  for (let at = 0; at < entries.length; at++) {
    const reason = misfit(entries[at], at + 1, previous);
    if (reason !== undefined) return { valid: false, at, reason };
    previous = (entries[at] as Entry).hash;
  }
  return { valid: true };
}

/**
 * Verifies the chain and that it still holds the entry an anchor remembers, so that a lost tail is found.
 * `at` is the index where the anchored entry should stand.
 *
 * Errors: RuleError `not-an-anchor`.
 *
 * @example verifyAgainstAnchor([], { sequence: 1, hash: 'ab…' }) // { valid: false, at: 0, reason: 'the anchored entry is gone' }
 */
export function verifyAgainstAnchor(entries: Entry[], anchor: { sequence: number; hash: string }): Verdict {
  if (!isSequence(anchor?.sequence) || !HASH.test(anchor.hash))
    throw new RuleError('not-an-anchor', 'An anchor is a sequence number and a hash.', 'anchor');
  const verdict = verify(entries);
  const at = anchor.sequence - 1;
  if (!verdict.valid && verdict.at <= at) return verdict;
  const entry = entries[at];
  if (entry === undefined) return { valid: false, at, reason: 'the anchored entry is gone' };
  if (entry.hash !== anchor.hash) return { valid: false, at, reason: 'the entry is not the one anchored' };
  return verdict;
}

function misfit(entry: unknown, sequence: number, previous: string): string | undefined {
  if (typeof entry !== 'object' || entry === null) return 'not an entry';
  const found = entry as Entry;
  if (found.sequence !== sequence) return `sequence ${String(found.sequence)} where ${sequence} belongs`;
  if (found.previous !== previous) return 'previous is not the hash of the entry before';
  try {
    if (hashOf({ sequence, previous, body: found.body }) !== found.hash) return 'the hash does not match the content';
  } catch (error) {
    if (error instanceof RuleError) return `the body is not JSON: ${error.message}`;
    throw error;
  }
  return undefined;
}

function hashOf(content: { sequence: number; previous: string; body: unknown }): string {
  // The canonical text covers exactly these three members, whatever else the caller's object carries.
  const { sequence, previous, body } = content;
  return bytesToHex(sha256(utf8ToBytes(canonicalJson({ sequence, previous, body }))));
}

function refuseMalformed(entry: Entry): void {
  if (!isSequence(entry?.sequence) || !HASH.test(entry.hash))
    throw new RuleError('not-an-entry', 'The entry before has no sequence number or no hash.', 'previous');
}

function isSequence(value: unknown): value is number {
  return Number.isSafeInteger(value) && (value as number) >= 1;
}
