import type { ProblemKind } from '../problems.ts';

export const purchasingProblems = {
  'supplier-not-approved': {
    status: 409,
    title: 'The supplier is not approved today',
    next: 'Renew the approval, or order from an approved supplier.',
  },
  'over-delivery': {
    status: 409,
    title: 'More arrived than the order line still expects',
    next: 'Count again; take the surplus knowingly, or send it back.',
  },
  'wrong-delivery': {
    status: 409,
    title: 'This is not the part that was ordered',
    next: 'Receive it against the right line, or refuse the delivery.',
  },
  'order-line-closed': {
    status: 409,
    title: 'Nothing more is expected on this order line',
    next: 'Receive it without an order, or raise a new one.',
  },
} as const satisfies Record<string, ProblemKind>;
