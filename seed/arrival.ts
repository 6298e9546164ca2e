import type { Sent } from '@hubwright/contracts/operation';
import type { workOrderOperations } from '@hubwright/contracts/work-orders/operations';
import { customers } from './data/customers.ts';
import type { VisitSeed } from './data/visits.ts';
import type { Reference } from './reference.ts';

type Arrival = Sent<typeof workOrderOperations.receiveUnit>;

/** Part numbers of hub and blade by model; a governor has neither. */
const pieces: Record<
  VisitSeed['model'],
  { hub: string; blade: string; blades: number; clamp?: string; counterweight?: string } | undefined
> = {
  'Q3C-76': { hub: 'Q301-61', blade: 'Q76-B', blades: 3 },
  'Q2C-72': { hub: 'Q201-61', blade: 'Q72-B', blades: 2 },
  'Q4F-84': { hub: 'Q401-61', blade: 'Q84-B', blades: 4, clamp: 'Q401-64', counterweight: 'Q401-65' },
  'SW5-83': { hub: 'S501-61', blade: 'S83-B', blades: 5 },
  // One piece.
  'QX-70': undefined,
  VG14: undefined,
};

/** What the desk enters when the box is opened. */
export function arrival(seed: VisitSeed, ids: Reference): Arrival {
  const { registration } = seed;
  const airframe = customers
    .flatMap(({ aircraft }) => aircraft)
    .find((one) => one.registration === registration)?.airframe;
  const applicationId = ids.applications.get(`${seed.model} ${airframe} ${seed.position ?? 'single'}`);
  const hours = {
    sinceNewTenths: seed.sinceNew ?? ('unknown' as const),
    sinceOverhaulTenths: seed.sinceOverhaul ?? ('unknown' as const),
  };
  const known = seed.sinceNew !== undefined || seed.sinceOverhaul !== undefined;
  return {
    customerId: ids.customers.get(seed.customer) as string,
    modelId: ids.models.get(seed.model) as string,
    ...(registration ? { aircraftId: ids.aircraft.get(registration) as string } : {}),
    ...(applicationId ? { applicationId } : {}),
    ...(seed.use === null ? {} : { use: seed.use ?? 'normal' }),
    scope: seed.scope,
    serial: seed.serial,
    parts: parts(seed, hours),
    times: { ...hours, ...(known ? { meter: 'airframe' as const } : {}) },
    reason: seed.reason,
    events: [...(seed.events ?? [])],
    paperwork: [...(seed.papers ?? [])],
    looseItems: (seed.loose ?? []).map(([description, quantity]) => ({ description, quantity })),
  };
}

function parts(
  seed: VisitSeed,
  hours: Pick<Arrival['parts'][number], 'sinceNewTenths' | 'sinceOverhaulTenths'>,
): Arrival['parts'] {
  const made = pieces[seed.model];
  if (!made) return [];
  const digits = seed.serial.replace(/\D/g, '');
  const blades = Array.from({ length: made.blades }, (_, index) => ({
    kind: 'blade' as const,
    position: `blade-${index + 1}`,
    partNumber: made.blade,
    // Stripping will show it.
    serial: seed.trouble === 'identity-open' && index === 1 ? null : `QB${digits}${index + 1}`,
    ...hours,
  }));
  const { clamp, counterweight } = made;
  // Clamp and counterweight sit one to a blade.
  const each = (kind: 'clamp' | 'counterweight', letter: string, partNumber?: string) =>
    blades.flatMap((_, index) =>
      partNumber
        ? [
            {
              kind,
              position: `${kind}-${index + 1}`,
              partNumber,
              serial: `Q${letter}${digits}${index + 1}`,
              ...hours,
            },
          ]
        : [],
    );
  return [
    { kind: 'hub', position: 'hub', partNumber: made.hub, serial: `QH${digits}`, ...hours },
    ...blades,
    ...each('clamp', 'K', clamp),
    ...each('counterweight', 'W', counterweight),
  ];
}
