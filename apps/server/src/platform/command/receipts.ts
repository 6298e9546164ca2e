import { createHash } from 'node:crypto';
import { Problem } from '@hubwright/contracts/problems';
import { canonicalJson } from '@hubwright/rules/chain';
import type { Tx } from '../database/client.ts';
import { lockKey } from './locks.ts';

/** Which request this is: who sends it, under which key, and what it asks. */
export interface RequestIdentity {
  readonly personId: string;
  readonly key: string;
  readonly command: string;
  readonly inputHash: string;
}

export function hashOf(value: unknown): string {
  return createHash('sha256').update(canonicalJson(value)).digest('hex');
}

/**
 * Claims the key for this transaction, first of all statements. Answers the stored reply when the same request was already
 * done; throws `key-reused` when the key was used for something else, `still-running` when the twin has not finished.
 */
export async function claimReceipt(
  tx: Tx,
  request: RequestIdentity,
  now: Date,
): Promise<{ stored: unknown } | undefined> {
  const lock = String(lockKey(`receipt:${request.personId}:${request.key}`));
  const claimed = await tx.$executeRaw`
    INSERT INTO receipts (person_id, key, command, input_hash, created_at)
    SELECT ${request.personId}::uuid, ${request.key}, ${request.command}, ${request.inputHash}, ${now}
    WHERE pg_try_advisory_xact_lock(${lock}::bigint)
    ON CONFLICT DO NOTHING`;
  if (claimed === 1) return undefined;
  const earlier = await tx.receipt.findUnique({
    where: { personId_key: { personId: request.personId, key: request.key } },
  });
  if (!earlier) throw new Problem('still-running', 'The same request has not finished yet');
  if (earlier.inputHash !== request.inputHash || earlier.command !== request.command) {
    throw new Problem('key-reused', 'This Idempotency-Key was already used for a different request');
  }
  return { stored: earlier.reply };
}
