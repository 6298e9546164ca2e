import { z } from 'zod';
import { date, id, instant } from '../values.ts';

/** Where a part comes from; customers choose which of these they accept. */
export const sourceClasses = ['maker-new', 'approved-manufacturer', 'used-serviceable', 'customer-supplied'] as const;
export const sourceClass = z.enum(sourceClasses).meta({ id: 'SourceClass' });
export type SourceClass = (typeof sourceClasses)[number];

/** The words for a source class in sentences and on screens. */
export const sourceClassTitles: Record<SourceClass, string> = {
  'maker-new': 'maker’s new',
  'approved-manufacturer': 'approved manufacturer',
  'used-serviceable': 'used serviceable',
  'customer-supplied': 'customer-supplied',
};

/** Whether a lot may be used. `suspected`: somebody doubts that it is what its paper says; no ordinary judgement ends that. */
export const lotStates = ['quarantine', 'accepted', 'rejected', 'suspected'] as const;
export const lotState = z.enum(lotStates).meta({ id: 'LotState' });
export type LotState = (typeof lotStates)[number];

/**
 * Kinds of place a quantity can be at. `held`: rejected parts that are their owner's until given up. `lost`: what an outside vendor
 * lost or destroyed. `other-lot`: the same pieces under another lot's label, after a split or a merge.
 */
export const placeKinds = [
  'supplier',
  'receiving',
  'quarantine',
  'bin',
  'tray',
  'unit',
  'vendor',
  'scrap',
  'rack',
  'customer',
  'count',
  'held',
  'lost',
  'other-lot',
] as const;

/** Where things are kept: a unit’s inside, the scrap and what is outside the shop are no storage. */
export const storagePlaces = ['bin', 'receiving', 'quarantine', 'tray', 'rack', 'vendor', 'held'] as const;
export const storagePlace = z.enum(storagePlaces).meta({ id: 'StoragePlace' });

/** A place, with the words a person knows it by: “bin A-01”, “tray of KIT-0004”, “rack of WO-1001”. */
export const place = z
  .object({ kind: z.enum(placeKinds), ref: z.string(), title: z.string() })
  .meta({ id: 'PlaceNamed' });

export const partNamed = z
  .object({ id, number: z.string(), description: z.string(), issueUnit: z.string() })
  .meta({ id: 'PartNamed' });

export const lotRow = z
  .object({
    id,
    code: z.string(),
    part: partNamed,
    state: lotState,
    sourceClass,
    supplierLot: z.string(),
    certificate: z.string(),
    expiresOn: date.nullable(),
    onHand: z.int(),
    reserved: z.int(),
    place: z.string(),
    version: z.int(),
  })
  .meta({ id: 'LotRow' });

/** Pieces of a lot promised to a kit line. */
export const lotReservation = z
  .object({
    id,
    quantity: z.int(),
    kitId: id,
    kitCode: z.string(),
    workOrderNumber: z.string(),
    needBy: date,
    position: z.string(),
  })
  .meta({ id: 'LotReservation' });

export const lotDetail = lotRow
  .extend({
    origin: z.enum(['purchase', 'customer', 'taken-off', 'opening']),
    cureDate: z.string().nullable(),
    serial: z.string().nullable(),
    owner: z.object({ id, name: z.string() }).nullable(),
    order: z.object({ id, number: z.string(), lineId: id }).nullable(),
    workOrder: z.object({ id, number: z.string() }).nullable(),
    receivedAt: instant,
    note: z.string(),
    unitPrice: z.string(),
    /** Open suspicion, with who reported it. */
    suspicion: z.object({ reason: z.string(), reporter: z.string(), reportedAt: instant }).nullable(),
    /** The letter in which the owner gave rejected parts up. */
    surrender: z.object({ letter: z.string(), dated: date, givenBy: z.string() }).nullable(),
    places: z.array(place.extend({ onHand: z.int() })),
    reservations: z.array(lotReservation),
    /** Why this lot cannot be issued today, in sentences; empty when nothing stands against it. */
    blocked: z.array(z.string()),
  })
  .meta({ id: 'LotDetail' });

/** One line of the stock ledger. */
export const movementRow = z
  .object({
    id,
    sequence: z.int(),
    at: instant,
    lotId: id,
    lotCode: z.string(),
    part: z.object({ id, number: z.string() }),
    quantity: z.int(),
    from: place,
    to: place,
    position: z.string().nullable(),
    reason: z.string(),
    reversesId: id.nullable(),
    reversedById: id.nullable(),
    person: z.object({ id, displayName: z.string() }),
  })
  .meta({ id: 'MovementRow' });

export const expiringRow = z
  .object({
    lot: z.object({ id, code: z.string() }),
    part: partNamed,
    expiresOn: date,
    daysLeft: z.int(),
    onHand: z.int(),
    reserved: z.int(),
    place: z.string(),
    kits: z.array(z.string()),
  })
  .meta({ id: 'ExpiringRow' });

export const partStockRow = z
  .object({
    part: partNamed,
    have: z.int(),
    reserved: z.int(),
    inQuarantine: z.int(),
    onOrder: z.int(),
    nextArrival: date.nullable(),
    lots: z.int(),
  })
  .meta({ id: 'PartStockRow' });
