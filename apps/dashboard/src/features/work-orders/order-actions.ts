import type { Operation } from '@hubwright/contracts/operation';
import { type Role, roleTitles } from '@hubwright/contracts/roles';
import { workOrderOperations } from '@hubwright/contracts/work-orders/operations';
import { scopeOperations } from '@hubwright/contracts/work-orders/scope-operations';
import { mayCall } from '../../api/permission.ts';
import type { WorkOrder } from './work-orders.ts';

export const orderActionIds = [
  'look',
  'inspected',
  'application',
  'promise',
  'ok-to-ship',
  'ship',
  'return',
  'close',
  'scope',
  'hold',
] as const;
export type OrderActionId = (typeof orderActionIds)[number];

/** Something that can be done with the work order; `no` says why not, for this person and this state. */
export interface OrderAction {
  readonly id: OrderActionId;
  readonly text: string;
  readonly no: string | undefined;
  /** The order waits for this one. */
  readonly isNext: boolean;
}

interface Rule {
  readonly id: OrderActionId;
  readonly text: string;
  readonly op: Operation;
  readonly no: (order: WorkOrder) => string | undefined;
  readonly isNext?: (order: WorkOrder) => boolean;
  /** Not named at all where it plainly has no place any more. */
  readonly isPast?: (order: WorkOrder) => boolean;
}

const op = workOrderOperations;
const isGone = (order: WorkOrder) => ['shipped', 'closed', 'scrapped'].includes(order.stage);
const leaves = (order: WorkOrder) => order.stage === 'released' || order.stage === 'returning-unrepaired';
const heldNo = (order: WorkOrder) => (order.holds[0] ? `it is held: ${order.holds[0].reason}` : undefined);

function inspectedNo(order: WorkOrder): string | undefined {
  if (order.possible.includes('declare-inspected')) return heldNo(order);
  return order.stage === 'received' ? 'teardown has not begun' : 'the evaluation is not where it ends';
}

function okNo(order: WorkOrder): string | undefined {
  if (leaves(order)) return heldNo(order);
  const open = order.openItems[0];
  return `it is not approved for return to service${open ? `; first of ${order.openItems.length} open: ${open.what}` : ''}`;
}

const rules: readonly Rule[] = [
  {
    id: 'look',
    text: 'Sign the preliminary inspection',
    op: op.signPreliminaryInspection,
    no: heldNo,
    isNext: () => true,
    isPast: (order) => order.preliminaryInspection !== null || order.stage !== 'received',
  },
  {
    id: 'inspected',
    text: 'Declare it inspected',
    op: op.declareInspected,
    no: inspectedNo,
    isPast: (order) => !['received', 'teardown'].includes(order.stage),
  },
  {
    id: 'application',
    text: 'Say what it is for',
    op: op.setApplication,
    no: () => undefined,
    isPast: (order) => leaves(order) || isGone(order),
  },
  { id: 'promise', text: 'Promise a day', op: op.setPromise, no: () => undefined, isPast: isGone },
  {
    id: 'ok-to-ship',
    text: 'OK to ship',
    op: op.okToShip,
    no: okNo,
    isNext: () => true,
    isPast: (order) => order.okToShipAt !== null || isGone(order),
  },
  {
    id: 'ship',
    text: 'Ship',
    op: op.shipUnit,
    no: (order) => (order.okToShipAt === null ? 'nobody said OK to ship' : heldNo(order)),
    isNext: () => true,
    isPast: isGone,
  },
  {
    id: 'return',
    text: 'Goes back unrepaired',
    op: op.returnUnrepaired,
    no: () => undefined,
    isPast: (order) => !order.possible.includes('return-unrepaired'),
  },
  {
    id: 'close',
    text: 'Close the work order',
    op: op.closeWorkOrder,
    no: (order) => (order.possible.includes('close') ? heldNo(order) : 'it has not left the house'),
    isNext: () => true,
    isPast: (order) => order.stage === 'closed',
  },
  {
    id: 'scope',
    text: 'Change the scope',
    op: scopeOperations.changeScope,
    no: heldNo,
    isPast: (order) => !order.possible.includes('change-scope'),
  },
  { id: 'hold', text: 'Hold', op: op.placeHold, no: () => undefined, isPast: (order) => order.stage === 'closed' },
];

function notYours(operation: Operation, roles: readonly Role[]): string | undefined {
  if (mayCall(operation, roles) || !Array.isArray(operation.access)) return undefined;
  const who = (operation.access as readonly Role[]).map((role) => roleTitles[role].toLowerCase());
  return `this is for: ${who.join(', ')}`;
}

/** What can be done with the order as it stands by someone with these roles, and why not the rest. */
export function orderActions(order: WorkOrder, roles: readonly Role[]): readonly OrderAction[] {
  return rules
    .filter((rule) => !rule.isPast?.(order))
    .map((rule) => {
      const no = rule.no(order) ?? notYours(rule.op, roles);
      return { id: rule.id, text: rule.text, no, isNext: no === undefined && (rule.isNext?.(order) ?? false) };
    });
}
