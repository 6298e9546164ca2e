import { z } from 'zod';
import { decimal, line } from '../values.ts';

const unit = z.string().trim().min(1).max(20);
const name = z.string().trim().min(1).max(60);
const ascending = ({ low, high }: { low?: string | undefined; high?: string | undefined }) =>
  low === undefined || high === undefined || Number(low) <= Number(high);
const wrongWay = { message: 'The low limit is above the high one', path: ['low'] };
const isUnique = (texts: readonly (string | number)[]) => new Set(texts).size === texts.length;

/** Shims chosen by measuring: terms with their signs and a constant make the gap; end play is left of it, preload goes beyond it. */
export const fitSheet = z
  .strictObject({
    kind: z.literal('fit'),
    unit: z.enum(['in', 'mm']),
    places: z.array(name).min(1).max(8),
    terms: z
      .array(
        z
          .strictObject({ name, sign: z.enum(['+', '-']), low: decimal.optional(), high: decimal.optional() })
          .refine(ascending, wrongWay)
          .refine(({ low, high }) => (low === undefined) === (high === undefined), 'Give both limits or none'),
      )
      .min(1)
      .max(6),
    constant: decimal,
    leaves: z
      .strictObject({ kind: z.enum(['end-play', 'preload']), low: decimal, high: decimal })
      .refine(ascending, wrongWay),
    shims: z
      .array(
        z.strictObject({
          thickness: decimal.refine((text) => Number(text) > 0, 'A shim has a thickness above zero'),
          part: line.optional(),
        }),
      )
      .min(1)
      .max(10),
    mostPieces: z.int().min(1).max(6),
    /** Measured once it is together. */
    trial: z.strictObject({ name, unit, low: decimal, high: decimal }).refine(ascending, wrongWay),
  })
  .refine(({ places, terms }) => isUnique(places) && isUnique(terms.map((term) => term.name)), {
    message: 'Each place and each term has a name of its own',
    path: ['places'],
  })
  .refine(({ shims }) => isUnique(shims.map(({ thickness }) => Number(thickness))), {
    message: 'Each thickness once',
    path: ['shims'],
  })
  .meta({ id: 'FitSheet' });
