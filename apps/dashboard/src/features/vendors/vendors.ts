import type { Reply } from '@hubwright/contracts/operation';
import type { lossOperations } from '@hubwright/contracts/vendors/loss-operations';
import { vendorOperations } from '@hubwright/contracts/vendors/operations';
import { queryFor } from '../../api/query.ts';

export const outsideWorkQuery = queryFor(vendorOperations.outsideWork, {});
export type OutsideWork = Reply<typeof vendorOperations.outsideWork>['rows'][number];
export type VendorOrder = Reply<typeof vendorOperations.listVendorOrders>['rows'][number];
export type VendorLine = VendorOrder['lines'][number];
export type VendorLoss = Reply<typeof lossOperations.listVendorLosses>['rows'][number];

/** A vendor as the form that sends parts out offers it. */
export interface Vendor {
  readonly id: string;
  readonly name: string;
  readonly approvedUntil: string | null;
}

/** A piece of a rack that may go along. */
export interface RackPiece {
  readonly lotId: string;
  readonly words: string;
  readonly quantity: number;
}

export const conditionWords = {
  good: 'good',
  damaged: 'damaged',
  'wrong-work': 'not what was ordered',
  lost: 'lost',
} as const;
export const lossWords = { lost: 'lost by the vendor', destroyed: 'destroyed at the vendor' } as const;

/** A part of an order in words. */
export const titleOf = ({ workOrderNumber, position, work }: VendorLine) => `${workOrderNumber} ${position}: ${work}`;

interface OutsideLine {
  readonly order: VendorOrder;
  readonly line: VendorLine;
}

/** What leaves of the orders at vendors as a file: a line for each part. */
export const vendorColumns = [
  { header: 'Order', value: ({ order }: OutsideLine) => order.number },
  { header: 'Vendor', value: ({ order }: OutsideLine) => order.vendor.name },
  { header: 'Sent', value: ({ order }: OutsideLine) => order.sentOn },
  { header: 'Expected', value: ({ order }: OutsideLine) => order.expectedOn },
  { header: 'Days late', value: ({ order }: OutsideLine) => order.daysLate },
  { header: 'Work order', value: ({ line }: OutsideLine) => line.workOrderNumber },
  { header: 'Part', value: ({ line }: OutsideLine) => line.position },
  { header: 'Serial', value: ({ line }: OutsideLine) => line.serial },
  { header: 'Work', value: ({ line }: OutsideLine) => line.work },
  { header: 'Came back', value: ({ line }: OutsideLine) => (line.condition ? conditionWords[line.condition] : '') },
  { header: 'Certificate', value: ({ line }: OutsideLine) => line.certificate },
];
