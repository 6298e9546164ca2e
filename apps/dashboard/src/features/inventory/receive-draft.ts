import type { inventoryOperations, SourceClass } from '@hubwright/contracts/inventory/operations';
import type { checkAnswers } from '@hubwright/contracts/inventory/receiving-operations';
import type { Sent } from '@hubwright/contracts/operation';

type IssueUnit = NonNullable<Sent<typeof inventoryOperations.receiveLot>['unit']>;

/** What is known of the part before the box is opened. */
export interface Expecting {
  readonly partId: string;
  readonly number: string;
  readonly description: string;
  readonly issueUnit: IssueUnit;
  readonly certificateRequired: boolean;
  readonly serialised: boolean;
  readonly ages: boolean;
  /** What is looked at for its class; absent where no list was issued. */
  readonly checklist?: { readonly id: string } | undefined;
  /** The order line it is received against, when there is one. */
  readonly line?: { readonly id: string; readonly orderNumber: string; readonly open: number } | undefined;
}

/** How one item of the checklist was found. */
export interface Looked {
  readonly answer: (typeof checkAnswers)[number] | null;
  readonly note: string;
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
  /** The unit the paper counts in; as issued unless it says another. */
  unit: IssueUnit | null;
  /** Whom it came from, where no order says it. */
  supplierId: string | null;
  takeSurplus: boolean;
  deliveryNote: string;
  answers: readonly Looked[];
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
  unit: null,
  supplierId: null,
  takeSurplus: false,
  deliveryNote: '',
  answers: [],
};

/** The answers so far with one changed; items not answered yet stay so. */
export function answered(answers: readonly Looked[], item: number, changes: Partial<Looked>): readonly Looked[] {
  const length = Math.max(answers.length, item + 1);
  return Array.from({ length }, (_, at) => {
    const before = answers[at] ?? { answer: null, note: '' };
    return at === item ? { ...before, ...changes } : before;
  });
}

/** What is sent; what was left empty is left out, so that the schema says what is missing at its own field. */
export function toSend(expecting: Expecting, found: Found): Sent<typeof inventoryOperations.receiveLot> {
  const { quantity, sourceClass, cureDate, serial, customerId, unit, supplierId, answers, ...rest } = found;
  return {
    ...rest,
    partId: expecting.partId,
    quantity: quantity === '' ? Number.NaN : Number(quantity),
    sourceClass: sourceClass as SourceClass,
    ...(cureDate === '' ? {} : { cureDate }),
    ...(serial === '' ? {} : { serial }),
    ...(customerId === '' ? {} : { customerId }),
    unit: unit ?? expecting.issueUnit,
    ...(supplierId && !expecting.line ? { supplierId } : {}),
    answers: answers.flatMap(({ answer, note }, item) =>
      answer ? [{ item, answer, note: answer === 'not-good' ? note : '' }] : [],
    ),
    ...(expecting.checklist ? { checklistId: expecting.checklist.id } : {}),
    ...(expecting.line ? { purchaseOrderLineId: expecting.line.id } : {}),
  };
}
