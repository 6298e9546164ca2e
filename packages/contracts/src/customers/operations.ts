import { z } from 'zod';
import { sourceClass } from '../inventory/operations.ts';
import { command, read } from '../operation.ts';
import { changed, date, id, instant, line, listOf, page } from '../values.ts';

export const hourMeters = ['tachometer', 'hour-meter', 'airframe'] as const;
/** Counted one by one, beside the hours. */
export const cycleMeters = ['landings', 'starts'] as const;
export const meters = [...hourMeters, ...cycleMeters] as const;
export const hourMeter = z.enum(hourMeters).meta({ id: 'HourMeter' });
export const cycleMeter = z.enum(cycleMeters).meta({ id: 'CycleMeter' });
export const meter = z.enum(meters).meta({ id: 'Meter' });
export type Meter = (typeof meters)[number];
export type HourMeter = (typeof hourMeters)[number];
export type CycleMeter = (typeof cycleMeters)[number];

/** What a meter counts: hours in tenths, or cycles one by one. The two are never added. */
export function measureOf(kind: string): 'hours' | 'cycles' {
  return cycleMeters.some((one) => one === kind) ? 'cycles' : 'hours';
}

/** What a meter read: one of the two, by what it counts. */
export const figureRead = {
  hoursTenths: z
    .int()
    .min(0, 'Hours cannot be negative')
    .max(2_000_000, 'More than 200,000 hours is not plausible')
    .optional(),
  /** In the place of hours on a meter of landings or starts. */
  cycles: z.int().min(0, 'Cycles cannot be negative').max(1_000_000, 'More than a million is not plausible').optional(),
};
/** What a meter showed, in what it counts; the other is null. */
export const figureShown = { hoursTenths: z.int().nullable(), cycles: z.int().nullable() };

const details = {
  name: line,
  contactName: z.string().trim().max(200),
  email: z.union([z.email(), z.literal('')]),
  phone: z.string().trim().max(40),
  address: z.string().trim().max(400),
  acceptedSources: z.array(sourceClass).min(1, 'Name at least one source of parts this customer accepts'),
};
const customerCode = z
  .string()
  .trim()
  .toUpperCase()
  .regex(/^[A-Z0-9][A-Z0-9-]{1,11}$/, 'Use 2 to 12 letters, digits or dashes');
const customerRow = z
  .object({ ...details, id, code: z.string(), unpaidHold: z.boolean(), aircraftCount: z.int(), version: z.int() })
  .meta({ id: 'CustomerRow' });

export const registration = z
  .string()
  .trim()
  .toUpperCase()
  .regex(/^[A-Z0-9][A-Z0-9-]{1,9}$/, 'Use 2 to 10 letters, digits or dashes');
const reading = z.object({
  readOn: date,
  meter,
  ...figureShown,
  recordedAt: instant,
});
const aircraftRow = z
  .object({
    id,
    customerId: id,
    registration: z.string(),
    airframe: z.string(),
    engine: z.string(),
    latestReadings: z.array(reading),
  })
  .meta({ id: 'AircraftRow' });

const desk = ['front-desk', 'manager'] as const;

export const customerOperations = {
  listCustomers: read({
    id: 'list-customers',
    noun: 'customers',
    path: '/api/customers',
    access: 'signed-in',
    summary: 'Customers by name; search finds any piece of name or code',
    input: z.strictObject({ ...page, search: z.string().max(100).optional() }),
    output: listOf(customerRow),
  }),
  showCustomer: read({
    id: 'show-customer',
    noun: 'customers',
    path: '/api/customers/:customerId',
    access: 'signed-in',
    summary: 'One customer with their aircraft and the latest reading of each meter',
    input: z.strictObject({ customerId: id }),
    output: customerRow.extend({ aircraft: z.array(aircraftRow) }).meta({ id: 'CustomerDetail' }),
  }),
  listAircraft: read({
    id: 'list-aircraft',
    noun: 'customers',
    path: '/api/customers/:customerId/aircraft',
    access: 'signed-in',
    summary: 'Aircraft of a customer with the latest reading of each meter',
    input: z.strictObject({ customerId: id, ...page }),
    output: listOf(aircraftRow),
  }),
  addCustomer: command({
    id: 'add-customer',
    noun: 'customers',
    path: '/api/customers',
    access: desk,
    summary: 'Add a customer and which sources of parts they accept',
    input: z.strictObject({
      ...details,
      code: customerCode,
      contactName: details.contactName.default(''),
      email: details.email.default(''),
      phone: details.phone.default(''),
      address: details.address.default(''),
    }),
    output: changed,
    personal: ['contactName', 'email', 'phone', 'address'],
  }),
  changeCustomer: command({
    id: 'change-customer',
    noun: 'customers',
    method: 'PUT',
    path: '/api/customers/:customerId',
    access: desk,
    versioned: true,
    summary: 'Change a customer’s details, accepted sources or the hold for unpaid bills',
    input: z.strictObject({ ...details, customerId: id, unpaidHold: z.boolean() }),
    output: changed,
    touches: ['work-orders'],
    personal: ['contactName', 'email', 'phone', 'address'],
  }),
  addAircraft: command({
    id: 'add-aircraft',
    noun: 'customers',
    path: '/api/customers/:customerId/aircraft',
    access: desk,
    summary: 'Add an aircraft of a customer',
    input: z.strictObject({ customerId: id, registration, airframe: line, engine: line }),
    output: changed,
  }),
  recordReading: command({
    id: 'record-reading',
    noun: 'customers',
    path: '/api/aircraft/:aircraftId/readings',
    access: desk,
    summary: 'Record what a meter of an aircraft read on a day',
    input: z.strictObject({
      aircraftId: id,
      readOn: date,
      meter,
      ...figureRead,
    }),
    output: changed,
    touches: ['due-dates'],
    problems: ['reading-out-of-line'],
  }),
} as const;
