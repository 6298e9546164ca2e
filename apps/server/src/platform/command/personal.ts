import { createHash } from 'node:crypto';
import type { Operation } from '@hubwright/contracts/operation';
import { canonicalJson } from '@hubwright/rules/chain';
import type { Tx } from '../database/client.ts';
import type { Subject } from './command.ts';

/** A value kept beside the chain. */
export interface PersonalValue {
  readonly field: string;
  readonly salt: string;
  readonly value: unknown;
}

/** What stands in the chain instead of a personal value: who has salt and value can show that it is this one. */
export function withheldHash(salt: string, value: unknown): string {
  return createHash('sha256')
    .update(`${salt}:${canonicalJson(value)}`)
    .digest('hex');
}

/**
 * Takes the personal fields out of what is recorded; the salt keeps short values from being guessed from their hash. `newSalt`
 * comes from outside like ids do, so that the same seed gives the same chains.
 */
export function withhold(
  { personal }: Pick<Operation, 'personal'>,
  input: Record<string, unknown>,
  newSalt: () => string,
): { recorded: Record<string, unknown>; values: PersonalValue[] } {
  const values = personal
    .filter((field) => input[field] !== undefined && input[field] !== null)
    .map((field) => ({ field, salt: newSalt(), value: input[field] }));
  const hashes = values.map(({ field, salt, value }) => [field, { withheld: withheldHash(salt, value) }]);
  return { recorded: { ...input, ...Object.fromEntries(hashes) }, values };
}

/** The first subject is whom the values are about. */
export async function keepPersonal(
  tx: Tx,
  { entryId, subjects }: { entryId: string; subjects: readonly Subject[] },
  values: readonly PersonalValue[],
): Promise<void> {
  const [subject] = subjects;
  if (!subject || values.length === 0) return;
  await tx.personalValue.createMany({
    data: values.map(({ field, salt, value }) => ({
      entryId,
      field,
      salt,
      value: value as string,
      subjectKind: subject.kind,
      subjectId: subject.id,
    })),
  });
}
