import { z } from 'zod';
import { hourMeter } from '../customers/operations.ts';
import { partClasses } from '../manuals/words.ts';
import { cyclesSinceNew, hoursTenths, line } from '../values.ts';

/** Null means nobody could read it yet. */
export const arrivingSerial = z
  .string()
  .trim()
  .min(1, 'Enter the serial, or say that it is not readable yet')
  .max(40)
  .nullable();

/** `sinceNew` and `sinceOverhaul` in tenths of an hour or unknown, cycles since new likewise; which meter was read and what it showed. */
export const declaredTimes = z.strictObject({
  sinceNewTenths: hoursTenths,
  sinceOverhaulTenths: hoursTenths,
  sinceNewCycles: cyclesSinceNew.default('unknown'),
  meter: hourMeter.optional(),
  meterTenths: z.int().min(0, 'A meter cannot read less than nothing').max(2_000_000).optional(),
});

/** A hub or blade at the dock; what nobody says is unknown. */
export const arrivingPart = z.strictObject({
  kind: z.enum(partClasses).exclude(['assembly']),
  /** As the kit list names it: `hub`, `blade 1`, `blade 2`… */
  position: z.string().trim().min(1).max(40),
  partNumber: z.string().trim().min(1).max(60),
  maker: line.optional(),
  serial: arrivingSerial,
  sinceNewTenths: hoursTenths.default('unknown'),
  sinceOverhaulTenths: hoursTenths.default('unknown'),
  sinceNewCycles: cyclesSinceNew.default('unknown'),
});
