import { z } from 'zod';

/** How a unit is used, as far as manuals give other times for it. Words of the airworthiness categories and of common practice. */
export const useCategories = ['normal', 'utility', 'acrobatic', 'agricultural', 'training', 'floats'] as const;
export const useCategory = z.enum(useCategories).meta({ id: 'UseCategory' });
export type UseCategory = (typeof useCategories)[number];
export const useTitles: Record<UseCategory, string> = {
  normal: 'Normal',
  utility: 'Utility',
  acrobatic: 'Acrobatic',
  agricultural: 'Agricultural',
  training: 'Training',
  floats: 'On floats',
};

/** How a unit was preserved before it was put in storage. */
export const preservations = ['none', 'short-term', 'long-term'] as const;
export const preservation = z.enum(preservations).meta({ id: 'Preservation' });
export type Preservation = (typeof preservations)[number];
export const preservationTitles: Record<Preservation, string> = {
  none: 'not preserved',
  'short-term': 'preserved for a short time',
  'long-term': 'preserved for a long time',
};

const months = z.int().min(1).max(600);
const partNumber = z.string().trim().min(1).max(60);

const storageRule = z
  .strictObject({
    preservation,
    /** Whether time in storage like this counts toward limits in months. */
    counts: z.boolean(),
    /** The longest it may lie like this without an inspection. */
    longestMonths: months.optional(),
  })
  .meta({ id: 'StorageRule' });

const sealLife = z
  .strictObject({
    partNumber,
    /** From the day the unit was closed over it. */
    installedMonths: months.optional(),
    /** From its cure date, wherever it was meanwhile. */
    curedMonths: months.optional(),
    endOfMonth: z.boolean().default(false),
    requirement: z.enum(['recommended', 'required']),
  })
  .refine((given) => given.installedMonths !== undefined || given.curedMonths !== undefined, {
    message: 'Give months installed, months from cure, or both',
  })
  .meta({ id: 'SealLife' });

/** What a revision says of time in storage and of seals; where it says nothing of storage, time in storage counts. */
export const serviceLimits = z
  .strictObject({
    storage: z.array(storageRule).max(preservations.length),
    seals: z.array(sealLife).max(100),
  })
  .meta({ id: 'ServiceLimits' });
export type ServiceLimits = z.output<typeof serviceLimits>;
export const noServiceLimits: ServiceLimits = { storage: [], seals: [] };
