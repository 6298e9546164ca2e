import { z } from 'zod';
import { decimal } from '../values.ts';

const above0 = decimal.refine((text) => Number(text) > 0, { message: 'This is above 0' });
const place = z.strictObject({
  name: z.string().trim().min(1).max(20),
  /** Degrees clockwise from blade 1 as seen from the front. */
  angle: decimal.refine((text) => Number(text) >= 0 && Number(text) < 360, { message: 'An angle is 0 to 360 degrees' }),
  radius: above0,
  pieces: z.int().min(1).max(12),
  /** The longest stack of one place, where the manual has one. */
  stack: above0.optional(),
});
const piece = z.strictObject({
  part: z.string().trim().min(1, 'Name the part number').max(60),
  /** Of one piece. */
  mass: above0,
  thickness: decimal.refine((text) => Number(text) >= 0, { message: 'A thickness is 0 or more' }),
});
const limit = z.discriminatedUnion('by', [
  z.strictObject({ by: z.literal('manual'), moment: above0 }),
  z.strictObject({ by: z.literal('iso-21940-11'), grade: above0, rpm: above0, massKg: above0 }),
]);

const distinct = (values: readonly string[]) => new Set(values).size === values.length;

/**
 * What a manual asks of the static balance of a propeller: where static weights may go and which, and how much may be left. Masses and
 * lengths are in the two units of the moment.
 */
export const staticBalanceSheet = z
  .strictObject({
    kind: z.literal('static-balance'),
    unit: z.enum(['g-in', 'oz-in', 'g-mm']),
    blades: z.int().min(2).max(6),
    places: z.array(place).max(24),
    hardware: z.array(piece).max(3),
    limit,
  })
  .refine(({ places }) => distinct(places.map(({ name }) => name)), {
    message: 'Two places have one name',
    path: ['places'],
  })
  .refine(({ hardware }) => distinct(hardware.map(({ part }) => part)), {
    message: 'This piece is listed twice',
    path: ['hardware'],
  })
  .refine(({ places, hardware }) => (places.length === 0) === (hardware.length === 0), {
    message: 'Places and the weights for them are named together, or none of either',
    path: ['hardware'],
  })
  .meta({ id: 'StaticBalanceSheet' });

export type StaticBalanceSheet = z.output<typeof staticBalanceSheet>;

interface Route {
  readonly scopes: readonly string[];
  readonly steps: readonly { readonly process: string; readonly sheet?: { readonly kind: string } | undefined }[];
}
interface Line {
  readonly part: string;
  readonly minimum?: number | undefined;
  readonly scopes: readonly string[];
}

/** Whether a sheet is that of a static balance. */
export function isStaticBalance(sheet: { readonly kind: string } | null | undefined): sheet is StaticBalanceSheet {
  return sheet?.kind === 'static-balance';
}

/** Where a coating comes after the static balance of the same route, which it would undo: its index, else undefined. */
export function coatedAfterBalance({ steps }: Pick<Route, 'steps'>): number | undefined {
  const balanced = steps.findIndex(({ sheet }) => isStaticBalance(sheet));
  const at = steps.findLastIndex(({ process }) => process === 'coating');
  return balanced >= 0 && at > balanced ? at : undefined;
}

/** Static weights of a model's routes that no as-needed line of its kit list has: they could not come through the ledger. */
export function weightsWithoutLine({ routes, kitList }: { routes: readonly Route[]; kitList: readonly Line[] }) {
  const missing = routes.flatMap(({ scopes, steps }) => {
    const hasLine = (part: string) =>
      scopes.every((scope) =>
        kitList.some((line) => line.part === part && line.minimum === 0 && line.scopes.includes(scope)),
      );
    const parts = steps.flatMap(({ sheet }) => (isStaticBalance(sheet) ? sheet.hardware.map(({ part }) => part) : []));
    return parts.filter((part) => !hasLine(part));
  });
  return [...new Set(missing)];
}
