import { z } from 'zod';

/** An id made by the server: uuid v7. */
export const id = z.uuid();

/** A calendar date in the shop's zone. */
export const date = z.iso.date();

/** An instant, always with Z. */
export const instant = z.iso.datetime();

/** A whole number of the part's smallest issue unit, at least one. */
export const pieces = z.int().min(1, 'A quantity is at least one piece').max(1_000_000);

/** Tenths of an hour, or the word unknown: never zero for unknown. */
export const hoursTenths = z.union([
  z.int().min(0, 'Hours cannot be negative').max(2_000_000, 'More than 200,000 hours is not plausible'),
  z.literal('unknown'),
]);

/** Cycles since new, or the word unknown: never zero for unknown. */
export const cyclesSinceNew = z.union([
  z.int().min(0, 'Cycles cannot be negative').max(10_000_000),
  z.literal('unknown'),
]);

/** Overhauls since new, or the word unknown: never zero for unknown. */
export const overhaulsSinceNew = z.union([
  z.int().min(0, 'Overhauls cannot be negative').max(1000),
  z.literal('unknown'),
]);

/** An amount in the currency's smallest unit. */
export const money = z.strictObject({ currency: z.string().regex(/^[A-Z]{3}$/), minor: z.int() }).meta({ id: 'Money' });

/** A decimal number as text, so that no digit is lost on the way. */
export const decimal = z.string().regex(/^-?\d{1,12}(\.\d{1,8})?$/, 'Write a decimal number such as 12.5');

/** One line of text. */
export const line = z.string().trim().min(1, 'This cannot be empty').max(200);

/** Several lines of text, may be empty. */
export const note = z.string().trim().max(4000);

/** Whole page of a list: lists are never unbounded. */
export const page = {
  limit: z.coerce.number().int().min(1).max(200).default(50),
  after: z.string().max(200).optional(),
};

/**
 * A signature asks for the password or the PIN again. `signer` is who the page said would sign: if someone else has taken
 * over the session since, nothing is signed.
 */
export const signature = z
  .union([
    z.strictObject({ password: z.string().min(1).max(200), signer: id.optional() }),
    z.strictObject({ pin: z.string().regex(/^\d{4,12}$/, 'A PIN is 4 to 12 digits'), signer: id.optional() }),
  ])
  .meta({ id: 'Signature' });

/** What a list answers: its rows and where the next page starts. */
export function listOf<T extends z.ZodType>(row: T) {
  return z.object({ rows: z.array(row), next: z.string().nullable() });
}

/** What a command answers at least: the id and new version of what it changed. */
export const changed = z.object({ id, version: z.int() }).meta({ id: 'Changed' });
