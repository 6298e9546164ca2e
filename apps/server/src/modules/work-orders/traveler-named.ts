import type { PartClass } from '@hubwright/contracts/manuals/words';

/** What a query of a step includes to name its part. */
export const withTraveler = {
  traveler: {
    include: {
      item: { select: { serial: true, provisionalName: true } },
      workOrder: { select: { number: true, customer: { select: { name: true } } } },
    },
  },
} as const;

interface Traveler {
  readonly id: string;
  readonly number: string;
  readonly partClass: string;
  readonly position: string;
  readonly workOrderId: string;
  readonly item: { readonly serial: string | null; readonly provisionalName: string | null };
  readonly workOrder: { readonly number: string };
}

/** A part by its traveler, as the contract names it. */
export function namedTraveler({ item, workOrder, ...traveler }: Traveler) {
  return {
    travelerId: traveler.id,
    travelerNumber: traveler.number,
    workOrderId: traveler.workOrderId,
    workOrderNumber: workOrder.number,
    partClass: traveler.partClass as PartClass,
    position: traveler.position,
    serial: item.serial ?? item.provisionalName ?? '',
  };
}
