import { z } from 'zod';
import { roleSchema } from '../roles.ts';
import { id } from '../values.ts';

/** How far inside the manual's limits a reading must lie, by the doubt of its instrument. */
export const guardBandMethod = z
  .enum(['none', 'uncertainty', 'root-sum-square', 'managed-risk'])
  .meta({ id: 'GuardBandMethod' });

/** Who is signed in here, and what their pages need to know of the shop. */
export const me = z
  .object({
    id,
    displayName: z.string(),
    initials: z.string(),
    roles: z.array(roleSchema),
    hasPin: z.boolean(),
    hasSecondFactor: z.boolean(),
    /** What this person must set up before anything else. */
    due: z.enum(['own-password', 'second-factor']).nullable(),
    /** The device locked itself: only unlocking, switching and signing out are open. */
    locked: z.boolean(),
    shop: z.object({
      name: z.string(),
      zone: z.string(),
      currency: z.string(),
      units: z.string(),
      lockAfterMinutes: z.int(),
      guardBand: guardBandMethod,
    }),
  })
  .meta({ id: 'Me' });
