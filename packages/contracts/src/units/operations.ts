import { z } from 'zod';
import { meter } from '../customers/operations.ts';
import { partClass, scopeSchema } from '../manuals/words.ts';
import { command, read } from '../operation.ts';
import {
  changed,
  cyclesSinceNew,
  date,
  hoursTenths,
  id,
  instant,
  line,
  overhaulsSinceNew,
  signature,
} from '../values.ts';
import { identityOperations } from './identity-operations.ts';

/** What the scan box can land on. */
export const foundKind = z
  .enum([
    'unit',
    'part-of-unit',
    'work-order',
    'traveler',
    'traveler-step',
    'kit',
    'lot',
    'part',
    'order',
    'supplier',
    'customer',
    'aircraft',
    'instrument',
    'field-balance',
  ])
  .meta({ id: 'FoundKind' });

export const itemOnRecord = z.object({
  id,
  kind: partClass,
  maker: z.string(),
  partNumber: z.string(),
  serial: z.string().nullable(),
  provisionalName: z.string().nullable(),
  version: z.int(),
});
export const timesOnRecord = z
  .object({
    recordedOn: date,
    sinceNewTenths: hoursTenths,
    sinceOverhaulTenths: hoursTenths,
    sinceNewCycles: cyclesSinceNew,
    meter: meter.nullable(),
    meterTenths: z.int().nullable(),
    basis: z.string(),
    workOrderId: id.nullable(),
  })
  .meta({ id: 'TimesOnRecord' });

const count = z.object({ tenths: z.union([z.int(), z.literal('unknown')]), atLeast: z.int() });

/** A part that sits or sat in an assembly, or in a part of it, with its times today; of one that is out, those of the day it left. */
export const partInside = itemOnRecord.extend({
  /** What it sits in itself. */
  parentId: id,
  /** 1 for what sits in the assembly itself, 2 for the parts of that, and so on; each follows what it sits in. */
  level: z.int(),
  position: z.string(),
  fromDate: date,
  toDate: date.nullable(),
  times: z
    .object({
      asOf: date,
      sinceNew: count,
      sinceOverhaul: count,
      cyclesSinceNew: z.object({ cycles: z.union([z.int(), z.literal('unknown')]), atLeast: z.int() }),
      /** The day of the last reading that is in it. */
      countedThrough: date,
      restsOn: z.string(),
    })
    .meta({ id: 'PartTimes' }),
});

/** An assembly that a part sits or sat in. */
export const assemblyAround = z.object({
  id,
  /** A unit of its own, not a part that holds parts. */
  isUnit: z.boolean(),
  partNumber: z.string(),
  serial: z.string().nullable(),
  position: z.string(),
  fromDate: date,
  toDate: date.nullable(),
});

const unitHistory = itemOnRecord
  .extend({
    model: z.object({ id, designation: z.string(), bladeCount: z.int().nullable() }).nullable(),
    identityResolved: z.boolean(),
    /** The part on record it turned out to be; its history goes on there. */
    joinedInto: z.object({ id, serial: z.string() }).nullable(),
    times: z.array(timesOnRecord),
    parts: z.array(partInside),
    installedIn: z.array(assemblyAround),
    workOrders: z.array(
      z.object({
        id,
        number: z.string(),
        scope: scopeSchema,
        stage: z.string(),
        reason: z.string(),
        customer: z.string(),
        receivedOn: date,
        closedAt: instant.nullable(),
        findings: z.int(),
      }),
    ),
  })
  .meta({ id: 'UnitHistory' });

export const unitOperations = {
  find: read({
    id: 'find',
    noun: 'units',
    path: '/api/find',
    access: 'signed-in',
    summary: 'One search for the scan box: an exact code or serial first, then anything that contains it',
    input: z.strictObject({
      text: z.string().trim().min(1).max(100),
      limit: z.coerce.number().int().min(1).max(50).default(20),
    }),
    output: z.object({
      rows: z.array(
        z
          .object({
            kind: foundKind,
            id: z.string(),
            title: z.string(),
            detail: z.string(),
            path: z.string(),
            exact: z.boolean(),
          })
          .meta({ id: 'Found' }),
      ),
    }),
  }),
  unitHistory: read({
    id: 'unit-history',
    noun: 'units',
    path: '/api/units/:itemId',
    access: 'signed-in',
    summary: 'A unit or serialized part: its parts, times and past work orders',
    input: z.strictObject({ itemId: id }),
    output: unitHistory,
  }),
  confirmIdentity: command({
    id: 'confirm-identity',
    noun: 'units',
    path: '/api/units/:itemId/confirm-identity',
    access: ['inspector'],
    versioned: true,
    summary: 'Sign which serial was read on a part that was not readable before',
    signs: 'I read this serial on the part itself',
    input: z.strictObject({ itemId: id, serial: z.string().trim().min(1, 'Enter the serial').max(40), signature }),
    output: changed,
    touches: ['work-orders'],
    problems: ['identity-taken', 'identity-settled', 'not-authorised'],
  }),
  establishTimes: command({
    id: 'establish-times',
    noun: 'units',
    path: '/api/units/:itemId/times',
    access: ['inspector'],
    versioned: true,
    summary: 'Sign what papers say of the times of a unit or part; earlier records stay',
    signs: 'I read these times in the paper named',
    input: z.strictObject({
      itemId: id,
      sinceNewTenths: hoursTenths,
      sinceOverhaulTenths: hoursTenths,
      sinceNewCycles: cyclesSinceNew.default('unknown'),
      sinceNewOverhauls: overhaulsSinceNew.default('unknown'),
      /** Which logbook, card or letter says so. */
      basis: line,
      signature,
    }),
    output: changed,
    touches: ['work-orders', 'releases', 'due-dates'],
    problems: ['hours-wrong', 'not-authorised'],
  }),
  ...identityOperations,
} as const;
