import { z } from 'zod';
import { command, read } from '../operation.ts';
import { changed, date, decimal, id, line, listOf, page } from '../values.ts';
import { lotState, partNamed, storagePlace } from './shapes.ts';

/** What a part is to a kit. Mandatory parts, hardware and seals are always new. */
export const partClassesInStock = ['mandatory', 'hardware', 'seal', 'consumable', 'serialized', 'raw'] as const;
export const stockClass = z.enum(partClassesInStock).meta({ id: 'StockClass' });

/** The smallest unit a part is issued in; every quantity is a whole number of it. */
export const issueUnit = z.enum(['piece', 'inch', 'gram', 'millilitre', 'sheet']).meta({ id: 'IssueUnit' });

const price = decimal.refine((text) => !text.startsWith('-'), 'A price cannot be negative');
const number = z.string().trim().toUpperCase().min(1, 'Name the part number').max(60);
const part = {
  number,
  maker: line,
  description: line,
  class: stockClass,
  issueUnit,
  packSize: z.int().min(1).max(100_000),
  certificateRequired: z.boolean(),
  serialised: z.boolean(),
  leadTimeDays: z.int().min(0).max(1_000),
  unitPrice: price,
};
/** Since when a part may stand in: at once, from a day on, or only when what is left of the old part is used up. */
export const effectivities = ['now', 'from-date', 'until-used'] as const;
const standIn = z.object({
  /** Each may stand in for the other. */
  twoWay: z.boolean(),
  /** It has taken the other's place for good, and passes on what superseded it in turn. */
  supersedes: z.boolean(),
  effectivity: z.enum(effectivities),
  from: date.nullable(),
});
const alternate = z
  .strictObject({
    number,
    twoWay: z.boolean().default(false),
    supersedes: z.boolean().default(false),
    effectivity: z.enum(effectivities).default('now'),
    from: date.optional(),
  })
  .refine(({ effectivity, from }) => (effectivity === 'from-date') === (from !== undefined), {
    path: ['from'],
    message: 'A day belongs to “from a day on”, and only to that',
  })
  .meta({ id: 'AlternateGiven' });
const partRow = z
  .object({
    ...part,
    number: z.string(),
    unitPrice: z.string(),
    id,
    shelfLifeMonths: z.int().nullable(),
    minimumDaysAtBuild: z.int(),
    /** Hours it may be out of the freezer in all; null where it need not be frozen. */
    outTimeHours: z.int().nullable(),
    supplier: z.object({ id, code: z.string(), name: z.string() }).nullable(),
    homeBin: z.string().nullable(),
    alternates: z.array(standIn.extend({ id, number: z.string(), preference: z.int() })),
    /** Parts that this one may stand in for, and whether they may stand in for it. */
    standsInFor: z.array(standIn.extend({ id, number: z.string() })),
    version: z.int(),
  })
  .meta({ id: 'PartRow' });

const binCode = z
  .string()
  .trim()
  .toUpperCase()
  .regex(/^[A-Z0-9][A-Z0-9-]{0,19}$/, 'Use 1 to 20 letters, digits or dashes');
const binTitle = z.string().trim().max(100);
const binWalk = z.int().min(0).max(100_000);
const binNamed = z.object({ code: z.string() }).meta({ id: 'BinNamed' });
/** A place and what it holds; `walk` is null where nobody walks to pull, and an empty bin is a place too. */
const placeRow = z
  .object({
    kind: storagePlace,
    ref: z.string(),
    title: z.string(),
    label: z.string(),
    walk: z.int().nullable(),
    lots: z.int(),
    parts: z.int(),
  })
  .meta({ id: 'PlaceRow' });
const lotThere = z
  .object({
    id,
    code: z.string(),
    part: partNamed,
    state: lotState,
    onHand: z.int(),
    expiresOn: date.nullable(),
    owner: z.string().nullable(),
  })
  .meta({ id: 'LotThere' });
const keepers = ['parts-room', 'manager'] as const;

export const partOperations = {
  listParts: read({
    id: 'list-parts',
    noun: 'inventory',
    path: '/api/parts',
    access: 'signed-in',
    summary: 'Part numbers; search finds any piece of number or description',
    input: z.strictObject({
      ...page,
      search: z.string().max(100).optional(),
      class: stockClass.optional(),
      partId: id.optional(),
    }),
    output: listOf(partRow),
  }),
  addPart: command({
    id: 'add-part',
    noun: 'inventory',
    path: '/api/parts',
    access: keepers,
    summary: 'Add a part number with the parts that may stand in for it, best first',
    input: z.strictObject({
      ...part,
      packSize: part.packSize.default(1),
      certificateRequired: z.boolean().default(true),
      serialised: z.boolean().default(false),
      shelfLifeMonths: z.int().min(1).max(600).optional(),
      minimumDaysAtBuild: z.int().min(0).max(3_650).default(0),
      outTimeHours: z.int().min(1).max(10_000).optional(),
      supplierId: id.optional(),
      homeBin: binCode.optional(),
      alternates: z.array(number).max(10).default([]),
    }),
    output: changed,
    problems: ['unknown-part', 'alternates-loop'],
  }),
  setAlternates: command({
    id: 'set-alternates',
    noun: 'inventory',
    method: 'PUT',
    path: '/api/parts/:partId/alternates',
    access: keepers,
    versioned: true,
    summary: 'Say which parts may stand in for this one, best first, since when, and whether the other way round too',
    input: z.strictObject({ partId: id, alternates: z.array(alternate).max(10) }),
    output: changed,
    touches: ['kits'],
    problems: ['unknown-part', 'alternates-loop', 'superseded-twice'],
  }),
  listBins: read({
    id: 'list-bins',
    noun: 'inventory',
    path: '/api/bins',
    access: 'signed-in',
    summary: 'Bins in the order of the walk',
    input: z.strictObject({ ...page }),
    output: listOf(z.object({ code: z.string(), title: z.string(), walk: z.int() }).meta({ id: 'BinRow' })),
  }),
  addBin: command({
    id: 'add-bin',
    noun: 'inventory',
    path: '/api/bins',
    access: keepers,
    summary: 'Add a bin and its place in the walk',
    input: z.strictObject({
      code: binCode,
      title: binTitle.default(''),
      walk: binWalk,
    }),
    output: binNamed,
  }),
  changeBin: command({
    id: 'change-bin',
    noun: 'inventory',
    method: 'PUT',
    path: '/api/bins/:code',
    access: keepers,
    summary:
      'Say anew what a bin is called and where it comes in the walk; its code stays on the shelf and in the ledger',
    input: z.strictObject({ code: binCode, title: binTitle, walk: binWalk }),
    output: binNamed,
    touches: ['kits'],
  }),
  listPlaces: read({
    id: 'list-places',
    noun: 'inventory',
    path: '/api/places',
    access: 'signed-in',
    summary: 'What lies where: every bin in the order of the walk, then every other place that holds something',
    input: z.strictObject({ ...page }),
    output: listOf(placeRow),
  }),
  listLotsAt: read({
    id: 'list-lots-at',
    noun: 'inventory',
    path: '/api/places/:kind/lots',
    access: 'signed-in',
    summary: 'The lots that lie at one place, by part number, with how many pieces of each lie there',
    input: z.strictObject({ ...page, kind: storagePlace, ref: z.string().max(60).default('') }),
    output: listOf(lotThere),
  }),
} as const;
