import { z } from 'zod';

/** A password as it is given to be checked. */
export const password = z.string().min(1).max(200);
/** Counted in characters as people see them, not in the units of one encoding (SP 800-63B-4 §3.1.1.2). */
export const newPassword = z
  .string()
  .min(15, { error: 'Use at least 15 characters', abort: true })
  .max(200)
  .refine((text) => [...text.normalize('NFKC')].length >= 15, 'Use at least 15 characters');
export const newPin = z.string().regex(/^\d{4,12}$/, 'A PIN is 4 to 12 digits');
