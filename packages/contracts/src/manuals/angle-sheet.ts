import { z } from 'zod';
import { decimal, id, line } from '../values.ts';

/** Where the pitch change comes to rest. */
export const bladeStops = ['low', 'high', 'feather', 'reverse'] as const;
export const bladeStop = z.enum(bladeStops).meta({ id: 'BladeStop' });
export type BladeStop = (typeof bladeStops)[number];

const degrees = { low: decimal, high: decimal };

const stopAngles = z
  .strictObject({
    stop: bladeStop,
    ...degrees,
    /** How far the blades may differ there. */
    spread: decimal.optional(),
  })
  .refine(({ low, high }) => Number(low) < Number(high), {
    message: 'The low limit is above the high one',
    path: ['low'],
  })
  .refine(({ spread }) => spread === undefined || Number(spread) >= 0, {
    message: 'A spread is not below zero',
    path: ['spread'],
  })
  .meta({ id: 'StopAngles' });

/** Positions of the kit list whose seals a failed test is put down to; offered, never taken by themselves. */
export const sealPositions = z.array(line).max(20).default([]);

/** The blade angles of every application, in degrees, bounds inclusive. No angle is set without knowing which it is. */
export const anglesSheet = z
  .strictObject({
    kind: z.literal('angles'),
    blades: z.int().min(2).max(8),
    /** Where on the blade the protractor is held. */
    station: z.strictObject({ at: decimal, unit: z.string().trim().min(1).max(20) }),
    /** How often the propeller is cycled on air before it is read. */
    cycles: z.int().min(1).max(100),
    /** What the protractor can read at all. */
    protractor: z.strictObject(degrees),
    applications: z
      .array(z.strictObject({ applicationId: id, stops: z.array(stopAngles).min(1).max(bladeStops.length) }))
      .min(1)
      .max(60),
    seals: sealPositions,
  })
  .refine(({ protractor }) => Number(protractor.low) < Number(protractor.high), {
    message: 'A protractor reads from low to high',
    path: ['protractor', 'low'],
  })
  .refine(({ applications }) => isOnce(applications.map(({ applicationId }) => applicationId)), {
    message: 'Name each application once',
    path: ['applications'],
  })
  .refine(({ applications }) => applications.every(({ stops }) => isOnce(stops.map(({ stop }) => stop))), {
    message: 'Name each stop of an application once',
    path: ['applications'],
  })
  .refine(
    ({ applications, protractor: { low, high } }) =>
      applications.every(({ stops }) =>
        stops.every((stop) => Number(stop.low) >= Number(low) && Number(stop.high) <= Number(high)),
      ),
    { message: 'The protractor cannot read this far', path: ['protractor'] },
  )
  .meta({ id: 'AnglesSheet' });

export function isOnce(names: readonly string[]): boolean {
  return new Set(names).size === names.length;
}
