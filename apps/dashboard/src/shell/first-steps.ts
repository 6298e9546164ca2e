import { customerOperations } from '@hubwright/contracts/customers/operations';
import { inventoryOperations } from '@hubwright/contracts/inventory/operations';
import { partOperations } from '@hubwright/contracts/inventory/part-operations';
import { manualOperations } from '@hubwright/contracts/manuals/operations';
import type { Operation } from '@hubwright/contracts/operation';
import { peopleOperations } from '@hubwright/contracts/people/operations';
import { processOperations } from '@hubwright/contracts/processes/operations';
import { supplierOperations } from '@hubwright/contracts/purchasing/supplier-operations';
import { workOrderOperations } from '@hubwright/contracts/work-orders/operations';

/** One thing a new shop needs before its first unit can go through. */
export interface FirstStep {
  readonly id: string;
  readonly text: string;
  readonly href: string;
  /** What does it: whoever may call this does the step. */
  readonly by: Operation;
  /** The list that is empty until it is done, and whether its first rows show that it is. */
  readonly seen: { readonly in: Operation; readonly isDone: (rows: readonly unknown[]) => boolean };
}

const some = (rows: readonly unknown[]) => rows.length > 0;
type ManualRow = { revisions: readonly { state: string; currencyCheckedOn: string | null }[] };
const currentIn = (rows: readonly unknown[]) =>
  (rows as readonly ManualRow[]).flatMap(({ revisions }) => revisions.filter(({ state }) => state === 'current'));

/** In the order in which one stands on the other. */
export const firstSteps: readonly FirstStep[] = [
  {
    id: 'people',
    text: 'Add the people who work here, and say what each may sign.',
    href: '/administration/people',
    by: peopleOperations.addPerson,
    seen: { in: peopleOperations.listPeople, isDone: (rows) => rows.length > 1 },
  },
  {
    id: 'bins',
    text: 'Add the bins of the store, in the order one walks by them.',
    href: '/places',
    by: partOperations.addBin,
    seen: { in: partOperations.listBins, isDone: some },
  },
  {
    id: 'suppliers',
    text: 'Add the suppliers you are approved to buy from.',
    href: '/orders',
    by: supplierOperations.addSupplier,
    seen: { in: supplierOperations.listSuppliers, isDone: some },
  },
  {
    id: 'parts',
    text: 'Add the part numbers of your manuals.',
    href: '/parts',
    by: partOperations.addPart,
    seen: { in: partOperations.listParts, isDone: some },
  },
  {
    id: 'manuals',
    text: 'Add the manuals the shop holds.',
    href: '/manuals',
    by: manualOperations.addManual,
    seen: { in: manualOperations.listManuals, isDone: some },
  },
  {
    id: 'models',
    text: 'Add the models you overhaul, with their aircraft and flat rates.',
    href: '/models',
    by: manualOperations.addModel,
    seen: { in: manualOperations.listModels, isDone: some },
  },
  {
    id: 'revisions',
    text: 'Enter the revision you hold of each manual: kit lists, routes, limits, times.',
    href: '/manuals',
    by: manualOperations.issueRevision,
    seen: { in: manualOperations.listManuals, isDone: (rows) => some(currentIn(rows)) },
  },
  {
    id: 'currency',
    text: 'Ask the makers and sign that each revision is the current one.',
    href: '/manuals',
    by: manualOperations.checkCurrency,
    seen: {
      in: manualOperations.listManuals,
      isDone: (rows) => some(currentIn(rows)) && currentIn(rows).every((each) => each.currencyCheckedOn !== null),
    },
  },
  {
    id: 'instruments',
    text: 'Add the instruments with their calibration dates.',
    href: '/instruments',
    by: processOperations.addInstrument,
    seen: { in: processOperations.listInstruments, isDone: some },
  },
  {
    id: 'customers',
    text: 'Add the customers and their aircraft.',
    href: '/customers',
    by: customerOperations.addCustomer,
    seen: { in: customerOperations.listCustomers, isDone: some },
  },
  {
    id: 'stock',
    text: 'Receive what lies on the shelf, each lot with its certificate.',
    href: '/receiving?without=order',
    by: inventoryOperations.receiveLot,
    seen: { in: inventoryOperations.listLots, isDone: some },
  },
  {
    id: 'unit',
    text: 'Book the first unit in.',
    href: '/desk/book-in',
    by: workOrderOperations.receiveUnit,
    seen: { in: workOrderOperations.listWorkOrders, isDone: some },
  },
];
