import { z } from 'zod';
import { lotState, partNamed, sourceClass } from '../inventory/shapes.ts';
import { lineSource } from '../manuals/words.ts';
import { date, id, instant } from '../values.ts';

/** `open` until the build is closed by the ledger, or the work is called off. */
export const kitStates = ['open', 'closed', 'cancelled'] as const;
export const kitState = z.enum(kitStates).meta({ id: 'KitState' });

/**
 * How a line stands, worst last: nothing to pull from stock · in the unit · in the tray · promised to this kit · on the
 * shelf · on order in time · on order but late · short.
 */
export const lineStandings = [
  'not-needed',
  'installed',
  'in-tray',
  'reserved',
  'have',
  'on-order',
  'late',
  'short',
] as const;
export const lineStanding = z.enum(lineStandings).meta({ id: 'LineStanding' });
export type LineStanding = (typeof lineStandings)[number];

export const workOrderNamed = z.object({
  id,
  number: z.string(),
  stage: z.string(),
  customer: z.string(),
  unit: z.string(),
});

export const kitRow = z
  .object({
    id,
    code: z.string(),
    workOrder: workOrderNamed,
    state: kitState,
    needBy: date,
    lines: z.int(),
    /** Lines by how they stand. `have` includes reserved, `issued` tray and unit. */
    issued: z.int(),
    have: z.int(),
    onOrder: z.int(),
    late: z.int(),
    short: z.int(),
    /** Earliest day by which something short must be ordered; may lie in the past. */
    orderBy: date.nullable(),
    /** The day on which all of it is there, or never while something is short. */
    wholeOn: z.union([date, z.literal('never')]),
    /** Everything not yet issued lies on the shelf. */
    canFillNow: z.boolean(),
    /** The worst shortage as a sentence; empty when nothing is late or short. */
    sentence: z.string(),
    /** Percent where the customer has not approved the work yet: it is served after all firm work. Null where it is firm. */
    likely: z.int().nullable(),
    version: z.int(),
  })
  .meta({ id: 'KitRow' });

const peg = z.object({
  kind: z.enum(['lot', 'order']),
  /** Lot id or purchase order line id. */
  id,
  /** The order of an order line; null for a lot. */
  orderId: id.nullable(),
  /** Lot code or order number. */
  code: z.string(),
  part: z.string(),
  quantity: z.int(),
  date,
});

export const kitLine = z
  .object({
    id,
    sequence: z.int(),
    part: partNamed,
    position: z.string(),
    quantity: z.int(),
    /** Present on as-needed lines: the least that must be used; `quantity` is then the most. */
    minimum: z.int().nullable(),
    source: lineSource,
    findingId: id.nullable(),
    /** Pieces put in a second time because a test failed: the shop pays for them, never the customer. */
    shopPays: z.int(),
    /** When a later list, another scope or a finding asked for it or for more of it; null while only the first list does. */
    askedLaterAt: instant.nullable(),
    standing: lineStanding,
    inRack: z.int(),
    inTray: z.int(),
    installed: z.int(),
    /** Pieces still to be pulled from stock. */
    toPull: z.int(),
    reservations: z.array(
      z.object({
        ...{ id, lotId: id, lotCode: z.string(), quantity: z.int(), bin: z.string(), expiresOn: date.nullable() },
        /** Set aside for good: who, since when and why; null for an ordinary promise. */
        frozen: z.object({ by: z.string(), at: instant, reason: z.string() }).nullable(),
      }),
    ),
    have: z.int(),
    onOrder: z.int(),
    short: z.int(),
    pegs: z.array(peg),
    coveredOn: z.union([date, z.literal('never')]).nullable(),
    orderBy: date.nullable(),
    /** Part, quantity, date, kit, cause; empty when nothing is late or short. */
    sentence: z.string(),
  })
  .meta({ id: 'KitLine' });

const placedLot = z.object({
  lotId: id,
  lotCode: z.string(),
  lotVersion: z.int(),
  part: partNamed,
  position: z.string(),
  lineId: id.nullable(),
  quantity: z.int(),
  state: lotState,
  sourceClass,
  expiresOn: date.nullable(),
});

export const kitDetail = z
  .object({
    id,
    code: z.string(),
    workOrder: workOrderNamed,
    state: kitState,
    needBy: date,
    acceptedSources: z.array(sourceClass),
    version: z.int(),
    lines: z.array(kitLine),
    tray: z.array(placedLot),
    rack: z.array(placedLot),
    /** What the kit itself leaves open, by name: list lines that are not in it, pieces beyond what its lines ask for. */
    openItems: z.array(
      z.object({
        /** Where the pieces are; `list` where they are only listed. */
        place: z.enum(['list', 'tray', 'rack', 'unit']),
        what: z.string(),
      }),
    ),
    /** Lines of the list can be added now: the unit's serial was read since the kit was made. */
    canComplete: z.boolean(),
  })
  .meta({ id: 'KitDetail' });

/** What is expected of a part for units that are not in work yet. It is served last and makes no kit short. */
const expectedOfPart = z.object({
  /** The expectation over all months, what is planned for it, and what of that nothing covers. */
  quantity: z.number(),
  pieces: z.int(),
  short: z.int(),
  firstNeed: date,
  orderBy: date.nullable(),
  sentences: z.array(z.string()),
});

export const shortageRow = z
  .object({
    part: partNamed,
    short: z.int(),
    late: z.int(),
    /** Of `short`, what only work asks for that no customer has approved yet. */
    likelyShort: z.int(),
    /** That part weighed by how likely the work is, rounded up. */
    likelyWeighed: z.int(),
    firstNeed: date,
    orderBy: date.nullable(),
    leadTimeDays: z.int(),
    supplier: z.object({ id, name: z.string() }).nullable(),
    unitPrice: z.string(),
    packSize: z.int(),
    /** `short` rounded up to whole packs. */
    suggested: z.int(),
    /** Kit lines that wait for this part; the lists name the first fifty by need date. */
    kitLines: z.int(),
    kits: z.array(
      z.object({ kitId: id, kitCode: z.string(), lineId: id, position: z.string(), quantity: z.int(), needBy: date }),
    ),
    /** One sentence per kit line: part, quantity, date, kit, cause. */
    sentences: z.array(z.string()),
    /** Beside what kits are short of; null where nothing is expected. */
    expected: expectedOfPart.nullable(),
  })
  .meta({ id: 'ShortageRow' });

const sheetLine = z.object({
  lineId: id,
  kitId: id,
  kitCode: z.string(),
  sequence: z.int(),
  part: partNamed,
  position: z.string(),
  source: lineSource,
  required: z.int(),
  minimum: z.int().nullable(),
  installed: z.int(),
  missing: z.int(),
  inTray: z.int(),
  inRack: z.int(),
  /** What sits at this position, lot by lot. */
  lots: z.array(
    z.object({ lotId: id, lotCode: z.string(), quantity: z.int(), from: z.enum(['new', 'reused']), movementId: id }),
  ),
});

const partAmount = z.object({ part: z.string(), description: z.string(), issueUnit: z.string(), quantity: z.int() });

/** A line of the kit list that is in no kit: the unit's serial is not read, or was read after the kit was made. */
const waitingLine = partAmount
  .extend({ position: z.string(), serials: z.string(), why: z.enum(['serial-unread', 'not-in-kit']) })
  .meta({ id: 'WaitingKitLine' });

/** What the ledger says about a build. Only `closed` decides; the lists name every piece that stands against it. */
export const closingJudgement = z
  .object({
    closed: z.boolean(),
    leftOver: z.array(partAmount.extend({ place: z.enum(['tray', 'rack']), lots: z.array(z.string()) })),
    missing: z.array(partAmount.extend({ position: z.string().nullable() })),
    /** In the unit beyond the list, or from a source its position does not take; `places` names positions and lots. */
    unexpected: z.array(partAmount.extend({ places: z.array(z.string()) })),
    waiting: z.array(waitingLine),
    /** The same in sentences, as the builder reads them. */
    sentences: z.array(z.string()),
  })
  .meta({ id: 'ClosingJudgement' });

export const buildSheet = z
  .object({
    workOrderId: id,
    workOrderNumber: z.string(),
    kits: z.array(z.object({ id, code: z.string(), state: kitState, version: z.int() })),
    positions: z.array(sheetLine),
    tray: z.array(placedLot.extend({ kitId: id })),
    rack: z.array(placedLot.extend({ kitId: id.nullable() })),
    judgement: closingJudgement,
  })
  .meta({ id: 'BuildSheet' });
