import type { inventoryOperations, SourceClass } from '@hubwright/contracts/inventory/operations';
import type { Sent } from '@hubwright/contracts/operation';

/** What is known of the part before the box is opened. */
export interface Expecting {
  readonly partId: string;
  readonly number: string;
  readonly description: string;
  readonly issueUnit: string;
  readonly certificateRequired: boolean;
  readonly serialised: boolean;
  readonly ages: boolean;
  /** The order line it is received against, when there is one. */
  readonly line?: { readonly id: string; readonly orderNumber: string; readonly open: number } | undefined;
}

/** What the clerk finds in the box. Nothing of it is filled in beforehand. */
export interface Found {
  quantity: string;
  sourceClass: SourceClass | null;
  supplierLot: string;
  certificate: string;
  cureDate: string;
  serial: string;
  damage: string;
  customerId: string;
  takeSurplus: boolean;
}

export const nothingFound: Found = {
  quantity: '',
  sourceClass: null,
  supplierLot: '',
  certificate: '',
  cureDate: '',
  serial: '',
  damage: '',
  customerId: '',
  takeSurplus: false,
};

/** What is sent; what was left empty is left out, so that the schema says what is missing at its own field. */
export function toSend(expecting: Expecting, found: Found): Sent<typeof inventoryOperations.receiveLot> {
  const { quantity, sourceClass, cureDate, serial, customerId, ...rest } = found;
  return {
    ...rest,
    partId: expecting.partId,
    quantity: quantity === '' ? Number.NaN : Number(quantity),
    sourceClass: sourceClass as SourceClass,
    ...(cureDate === '' ? {} : { cureDate }),
    ...(serial === '' ? {} : { serial }),
    ...(customerId === '' ? {} : { customerId }),
    ...(expecting.line ? { purchaseOrderLineId: expecting.line.id } : {}),
  };
}
