import { z } from 'zod';
import { useCategory } from '../manuals/service-limits.ts';
import { declaredEvent, scopeSchema } from '../manuals/words.ts';
import { command, read } from '../operation.ts';
import { roleSchema } from '../roles.ts';
import { changed, date, id, instant, line, listOf, note, page, signature } from '../values.ts';
import { arrivingPart, arrivingSerial, declaredTimes } from './arriving.ts';
import { deskBoard, managerBoard, returningUnit, workOrderDetail, workOrderRow } from './shapes.ts';
import { consentSchema, holdKind, paper, stageSchema } from './states.ts';

const workOrderId = z.strictObject({ workOrderId: id });
const moved = changed.extend({ stage: stageSchema, consent: consentSchema }).meta({ id: 'WorkOrderMoved' });
const desk = ['front-desk', 'manager'] as const;
const anyBench = ['front-desk', 'parts-room', 'technician', 'inspector', 'manager'] as const;

export const workOrderOperations = {
  listWorkOrders: read({
    id: 'list-work-orders',
    noun: 'work-orders',
    path: '/api/work-orders',
    access: 'signed-in',
    summary: 'Work orders, newest first, with kit, holds and who has to act next',
    input: z.strictObject({
      ...page,
      /** A stage, or every stage before closing. */
      stage: z.union([stageSchema, z.literal('open')]).optional(),
      consent: consentSchema.optional(),
      customerId: id.optional(),
      held: z.stringbool().optional(),
      search: z.string().trim().max(100).optional(),
    }),
    output: listOf(workOrderRow),
  }),
  workOrder: read({
    id: 'work-order',
    noun: 'work-orders',
    path: '/api/work-orders/:workOrderId',
    access: 'signed-in',
    summary: 'Everything about one work order',
    input: workOrderId,
    output: workOrderDetail,
  }),
  returningUnit: read({
    id: 'returning-unit',
    noun: 'work-orders',
    path: '/api/returning-units',
    access: 'signed-in',
    summary: 'What the shop knows of a serial: past visits, times, parts. Equal serials exist under other part numbers',
    input: z.strictObject({ serial: z.string().trim().min(1).max(40), modelId: id.optional() }),
    output: z.object({ rows: z.array(returningUnit) }),
  }),
  deskBoard: read({
    id: 'desk-board',
    noun: 'work-orders',
    path: '/api/desk-board',
    access: 'signed-in',
    summary: 'Who waits for the desk, and whom the shop owes an answer',
    input: z.strictObject({}),
    output: deskBoard,
  }),
  managerBoard: read({
    id: 'manager-board',
    noun: 'work-orders',
    path: '/api/manager-board',
    access: 'signed-in',
    summary: 'Where each unit is, since when, what holds it and who acts next; turnaround of finished units by month',
    input: z.strictObject({ months: z.coerce.number().int().min(1).max(36).default(12) }),
    output: managerBoard,
  }),
  receiveUnit: command({
    id: 'receive-unit',
    noun: 'work-orders',
    path: '/api/work-orders',
    access: desk,
    summary: 'Book a unit in: identity, application, times, events, papers and loose items',
    input: z.strictObject({
      customerId: id,
      aircraftId: id.optional(),
      modelId: id,
      applicationId: id.optional(),
      /** How its owner uses it; while nobody says it the manual's strictest time counts. */
      use: useCategory.optional(),
      madeOn: date.optional(),
      scope: scopeSchema,
      serial: arrivingSerial,
      parts: z.array(arrivingPart).max(40),
      times: declaredTimes,
      reason: line,
      events: z.array(declaredEvent).max(6).default([]),
      paperwork: z.array(paper).max(10).default([]),
      paperworkNote: note.default(''),
      looseItems: z
        .array(z.strictObject({ description: line, quantity: z.int().min(1).max(1000) }))
        .max(60)
        .default([]),
      priority: z.int().min(1).max(3).default(2),
      /** For a work order that is known to be held from the start: an investigator's or adjuster's hold. */
      accidentHold: line.optional(),
      receivedOn: date.optional(),
    }),
    output: changed
      .extend({
        number: z.string(),
        unitId: id,
        kitId: id.nullable(),
        paperworkMissing: z.array(paper),
        /** What to ask the customer because of the declared events. */
        prompts: z.array(z.string()),
      })
      .meta({ id: 'UnitReceived' }),
    touches: ['units', 'kits', 'due-dates'],
    problems: [
      'already-in-shop',
      'installed-elsewhere',
      'reading-out-of-line',
      'scope-refused',
      'hours-wrong',
      'parts-wrong',
      'application-wrong',
      'no-current-revision',
    ],
  }),
  signPreliminaryInspection: command({
    id: 'sign-preliminary-inspection',
    noun: 'work-orders',
    path: '/api/work-orders/:workOrderId/preliminary-inspection',
    access: ['inspector'],
    versioned: true,
    summary: 'Sign the preliminary inspection, with the hidden-damage inspection when an event was declared',
    signs: 'I made the preliminary inspection of this unit, its papers and its loose items',
    input: z.strictObject({
      workOrderId: id,
      result: line,
      hiddenDamage: z.string().trim().max(2000).default(''),
      performedAt: instant.optional(),
      lateReason: line.optional(),
      signature,
    }),
    output: changed.extend({ signOffId: id }).meta({ id: 'PreliminaryInspectionSigned' }),
    problems: [
      'already-looked-at',
      'hidden-damage-unsaid',
      'wrong-state',
      'work-held',
      'late-reason-missing',
      'performed-in-future',
      'not-authorised',
    ],
  }),
  declareInspected: command({
    id: 'declare-inspected',
    noun: 'work-orders',
    path: '/api/work-orders/:workOrderId/declare-inspected',
    access: ['inspector'],
    versioned: true,
    summary: 'Evaluation is complete: the firm quote is due',
    input: workOrderId,
    output: moved,
    touches: ['quotes'],
    problems: ['wrong-state', 'work-held'],
  }),
  returnUnrepaired: command({
    id: 'return-unrepaired',
    noun: 'work-orders',
    path: '/api/work-orders/:workOrderId/return-unrepaired',
    access: desk,
    versioned: true,
    summary: 'The customer takes the unit back although work was agreed: work ends, promised parts are free again',
    input: z.strictObject({ workOrderId: id, decidedByName: line, reason: line }),
    output: moved,
    touches: ['quotes', 'kits', 'inventory', 'releases'],
    problems: ['wrong-state'],
  }),
  placeHold: command({
    id: 'place-hold',
    noun: 'work-orders',
    path: '/api/work-orders/:workOrderId/holds',
    access: anyBench,
    summary: 'Stop work for a named reason, and name the role that may lift it',
    input: z.strictObject({ workOrderId: id, kind: holdKind, reason: line, liftedByRole: roleSchema }),
    output: changed.extend({ holdId: id }).meta({ id: 'HoldPlaced' }),
    problems: ['wrong-state'],
  }),
  liftHold: command({
    id: 'lift-hold',
    noun: 'work-orders',
    path: '/api/holds/:holdId/lift',
    access: 'signed-in',
    summary: 'Lift a hold, by the role it names',
    input: z.strictObject({ holdId: id, reason: line }),
    output: changed,
    problems: ['hold-lifted', 'not-yours-to-lift'],
  }),
  listHolds: read({
    id: 'list-holds',
    noun: 'work-orders',
    path: '/api/holds',
    access: 'signed-in',
    summary: 'Open holds, oldest first',
    input: z.strictObject({ ...page, liftedByRole: roleSchema.optional() }),
    output: listOf(
      z
        .object({
          id,
          workOrder: z.object({ id, number: z.string() }),
          customer: z.string(),
          kind: holdKind,
          reason: z.string(),
          liftedByRole: roleSchema,
          placedBy: z.string(),
          placedAt: instant,
        })
        .meta({ id: 'HoldRow' }),
    ),
  }),
  setPromise: command({
    id: 'set-promise',
    noun: 'work-orders',
    method: 'PUT',
    path: '/api/work-orders/:workOrderId/promise',
    access: desk,
    versioned: true,
    summary: 'Promise the customer a day, or move the promise and say why',
    input: z.strictObject({ workOrderId: id, promisedOn: date.nullable(), reason: line }),
    output: changed,
    problems: ['promise-in-past', 'wrong-state'],
  }),
  setApplication: command({
    id: 'set-application',
    noun: 'work-orders',
    method: 'PUT',
    path: '/api/work-orders/:workOrderId/application',
    access: ['front-desk', 'manager', 'inspector'],
    versioned: true,
    summary: 'Say what the unit is for, once that is known: aircraft, engine and position decide angles and settings',
    input: z.strictObject({ workOrderId: id, applicationId: id, reason: line }),
    output: changed,
    problems: ['application-wrong', 'application-used', 'wrong-state'],
  }),
  okToShip: command({
    id: 'ok-to-ship',
    noun: 'work-orders',
    path: '/api/work-orders/:workOrderId/ok-to-ship',
    access: desk,
    versioned: true,
    summary: 'Say the unit may leave: loose items packed, papers in, bills looked at. Not the release',
    input: z.strictObject({
      workOrderId: id,
      looseItemsPacked: z.array(id).max(60).default([]),
      /** Why it leaves although the customer is on hold for unpaid bills. */
      unpaidReason: line.optional(),
      /** For a unit that goes back unrepaired: every piece carries an unserviceable tag. */
      taggedUnserviceable: z.boolean().default(false),
    }),
    output: changed,
    problems: ['not-released', 'not-tagged', 'loose-items-left', 'unpaid', 'work-held', 'wrong-state'],
  }),
  shipUnit: command({
    id: 'ship-unit',
    noun: 'work-orders',
    path: '/api/work-orders/:workOrderId/ship',
    access: desk,
    versioned: true,
    summary: 'The unit left the house',
    input: z.strictObject({ workOrderId: id, carrier: line, reference: z.string().trim().max(100).default('') }),
    output: moved,
    touches: ['units', 'due-dates'],
    problems: ['not-ok-to-ship', 'work-held', 'wrong-state'],
  }),
  closeWorkOrder: command({
    id: 'close-work-order',
    noun: 'work-orders',
    path: '/api/work-orders/:workOrderId/close',
    access: desk,
    versioned: true,
    summary: 'Close a shipped or scrapped work order; from then on the unit can be received again',
    input: z.strictObject({
      workOrderId: id,
      looseItemsReturned: z.array(id).max(60).default([]),
      note: note.default(''),
    }),
    output: moved,
    touches: ['units'],
    problems: ['wrong-state', 'work-held', 'loose-items-left'],
  }),
} as const;
