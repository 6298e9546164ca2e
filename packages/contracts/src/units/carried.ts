import { z } from 'zod';

/** What a part carries from visit to visit beside its times. */
export const carriedKinds = ['diameter', 'oversize', 'matched-set'] as const;
export const carriedKind = z.enum(carriedKinds).meta({ id: 'CarriedKind' });
export type CarriedKind = (typeof carriedKinds)[number];

export const carriedTitles: Record<CarriedKind, string> = {
  diameter: 'Current diameter',
  oversize: 'Oversize step',
  'matched-set': 'Matched set',
};
