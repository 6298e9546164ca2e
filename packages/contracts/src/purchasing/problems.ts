import type { ProblemKind } from '../problems.ts';

export const purchasingProblems = {
  'supplier-not-approved': {
    status: 409,
    title: 'The supplier is not approved today',
    next: 'A manager or inspector renews the approval or allows an exception with a reason; or order from an approved supplier.',
  },
  'over-delivery': {
    status: 409,
    title: 'More arrived than the order line still expects',
    next: 'Count again; take the surplus knowingly, or receive what was ordered and hold the rest to send it back.',
  },
  'wrong-delivery': {
    status: 409,
    title: 'This is not the part that was ordered',
    next: 'Hold it as a wrong delivery and send it back; the order stays open.',
  },
  'order-line-closed': {
    status: 409,
    title: 'Nothing more is expected on this order line',
    next: 'Receive it without an order, or raise a new one.',
  },
  'order-too-small': {
    status: 409,
    title: 'The order is under the supplier’s least sum',
    next: 'Order more there, wait for the next need, or say that the supplier takes it all the same.',
  },
  'offers-overlap': {
    status: 409,
    title: 'Another offer of this supplier holds at that time',
    next: 'Let this one end the day before the other begins, let it begin later, or change the other one instead.',
  },
  'delivered-twice': {
    status: 409,
    title: 'This delivery was received before',
    next: 'Look at the lot it became; if another box came, enter the number of its own paper.',
  },
  'already-returned': {
    status: 409,
    title: 'This went back before',
    next: 'Nothing is left to send back.',
  },
} as const satisfies Record<string, ProblemKind>;
