import { z } from 'zod';
import type { PartClass } from '../manuals/words.ts';

/** What is wrong, in the trade's words. */
export const damages = [
  'out-of-limits',
  'deformed',
  'bent',
  'cracked',
  'corroded',
  'worn',
  'nicked',
  'scored',
  'delaminated',
  'unbonded',
  'missing',
  'mate-rejected',
  'other',
] as const;
export const damage = z.enum(damages).meta({ id: 'Damage' });
export type Damage = (typeof damages)[number];

export const dispositions = ['serviceable', 'repair', 'reject'] as const;
export const disposition = z.enum(dispositions).meta({ id: 'Disposition' });
export type Disposition = (typeof dispositions)[number];

export interface Area {
  readonly code: string;
  readonly title: string;
  /** Carries the load that holds a blade on; common practice, no source: the current approved manual names its own. */
  readonly critical: boolean;
}

const area = (code: string, title: string, critical = false): Area => ({ code, title, critical });
const whole = area('general', 'The part in general');

/** Where a finding can be, by class of part. */
export const areas: Readonly<Record<PartClass, readonly Area[]>> = {
  assembly: [
    whole,
    area('leak', 'Leak test'),
    area('angle', 'Blade angle'),
    area('balance', 'Balance'),
    area('spinner-fit', 'Spinner fit'),
  ],
  hub: [
    whole,
    area('blade-socket', 'Blade socket', true),
    area('retention-bore', 'Retention bore', true),
    area('mounting-face', 'Mounting face', true),
    area('pilot-bore', 'Pilot bore', true),
    area('bolt-holes', 'Bolt holes', true),
    area('outside', 'Outside surface'),
    area('grease-fitting', 'Grease fitting'),
  ],
  blade: [
    whole,
    area('leading-edge', 'Leading edge'),
    area('trailing-edge', 'Trailing edge'),
    area('face', 'Face'),
    area('camber', 'Camber side'),
    area('tip', 'Tip'),
    area('shank', 'Shank', true),
    area('bore', 'Shank bore', true),
    area('retention', 'Retention', true),
    area('airfoil', 'Airfoil'),
    area('boot', 'De-ice boot'),
  ],
  clamp: [whole, area('bolt-lug', 'Bolt lug', true), area('bore', 'Bore', true)],
  counterweight: [whole, area('attachment', 'Attachment', true)],
  cylinder: [whole, area('bore', 'Bore'), area('thread', 'Thread')],
  piston: [whole, area('seal-groove', 'Seal groove'), area('rod', 'Rod')],
  spinner: [whole, area('dome', 'Dome'), area('bulkhead', 'Bulkhead')],
  'governor-body': [
    whole,
    area('bore', 'Bore'),
    area('gear-pocket', 'Gear pocket'),
    area('mounting-face', 'Mounting face'),
  ],
  flyweights: [whole, area('pivot', 'Pivot', true), area('toe', 'Toe')],
};

export function areaOf(partClass: PartClass, code: string): Area | undefined {
  return areas[partClass].find((known) => known.code === code);
}

/** A deformed hub in a critical area is rejected, never repaired (common practice, no source; manuals say so of their own hubs). */
export function mayRepair(partClass: PartClass, code: string, what: Damage): boolean {
  return !(partClass === 'hub' && what === 'deformed' && (areaOf(partClass, code)?.critical ?? true));
}
