import { z } from 'zod';

export const binCode = z
  .string()
  .trim()
  .toUpperCase()
  .regex(/^[A-Z0-9][A-Z0-9-]{0,19}$/, 'A bin code is up to 20 letters, digits and dashes');

/** Reservations that fell away because the pieces are no longer there, by kit. */
export const freed = z.array(z.object({ kitCode: z.string(), quantity: z.int() }));
