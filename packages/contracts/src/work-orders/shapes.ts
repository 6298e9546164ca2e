import { z } from 'zod';
import { meter } from '../customers/operations.ts';
import { declaredEvent, partClass, scopeSchema } from '../manuals/words.ts';
import { roleSchema } from '../roles.ts';
import { cyclesSinceNew, date, hoursTenths, id, instant } from '../values.ts';
import { actionSchema, ballHolder, consentSchema, holdKind, paper, stageSchema } from './states.ts';

/** The unit as people name it: `serial` is null while nobody could read it. */
export const unitNamed = z
  .object({
    id,
    maker: z.string(),
    designation: z.string(),
    serial: z.string().nullable(),
    provisionalName: z.string().nullable(),
  })
  .meta({ id: 'UnitNamed' });

const named = z.object({ id, code: z.string(), name: z.string() });

/** Lines of the kit that must get something new; those whose pieces lie in the tray or are in the unit; those that lack only what is promised. */
const kitLines = z.object({
  id,
  code: z.string(),
  state: z.string(),
  newLines: z.int(),
  pulled: z.int(),
  promised: z.int(),
});

const openHold = z.object({ id, kind: holdKind, reason: z.string(), liftedByRole: roleSchema, placedAt: instant });

export const workOrderRow = z
  .object({
    id,
    number: z.string(),
    customer: named,
    unit: unitNamed,
    scope: scopeSchema,
    stage: stageSchema,
    stageSince: instant,
    daysInStage: z.int(),
    consent: consentSchema,
    consentSince: instant,
    receivedOn: date,
    promisedOn: date.nullable(),
    priority: z.int(),
    lookedAt: z.boolean(),
    holds: z.array(openHold),
    /** Who has to act next. */
    ball: ballHolder,
    kit: kitLines.nullable(),
    version: z.int(),
  })
  .meta({ id: 'WorkOrderRow' });

export const timesNow = z
  .object({
    recordedOn: date,
    sinceNewTenths: hoursTenths,
    sinceOverhaulTenths: hoursTenths,
    sinceNewCycles: cyclesSinceNew,
    meter: meter.nullable(),
    meterTenths: z.int().nullable(),
    basis: z.string(),
  })
  .meta({ id: 'TimesNow' });

const partInUnit = z.object({
  id,
  kind: partClass,
  position: z.string(),
  maker: z.string(),
  partNumber: z.string(),
  serial: z.string().nullable(),
  provisionalName: z.string().nullable(),
  version: z.int(),
  times: timesNow.nullable(),
});

const quoteBrief = z.object({
  id,
  number: z.string(),
  kind: z.enum(['estimate', 'firm', 'over-and-above']),
  revision: z.int(),
  state: z.string(),
  currency: z.string(),
  totalMinor: z.int(),
  capMinor: z.int().nullable(),
  validUntil: date,
  sentAt: instant.nullable(),
  decidedAt: instant.nullable(),
  decidedByName: z.string().nullable(),
  decision: z.string().nullable(),
  version: z.int(),
});

const travelerBrief = z.object({
  id,
  number: z.string(),
  title: z.string(),
  position: z.string(),
  itemId: id,
  steps: z.int(),
  signed: z.int(),
  nextStep: z.string().nullable(),
  disposition: z.string().nullable(),
});

const findingBrief = z.object({
  id,
  number: z.string(),
  travelerId: id,
  place: z.string(),
  description: z.string(),
  disposition: z.string().nullable(),
  overAndAbove: z.boolean(),
});

const looseItem = z.object({ id, description: z.string(), quantity: z.int(), returnedAt: instant.nullable() });

const hold = openHold.extend({
  placedBy: z.string(),
  liftedBy: z.string().nullable(),
  liftedAt: instant.nullable(),
  liftReason: z.string().nullable(),
});

/** Something that keeps the unit from leaving, by name, and who clears it. */
export const openItem = z.object({ what: z.string(), holder: ballHolder }).meta({ id: 'OpenItem' });

export const workOrderDetail = workOrderRow
  .extend({
    model: z.object({ id, designation: z.string(), kind: z.string(), bladeCount: z.int().nullable() }),
    revision: z.object({ id, manual: z.string(), revision: z.string(), state: z.string() }),
    aircraft: z.object({ id, registration: z.string(), airframe: z.string(), engine: z.string() }).nullable(),
    application: z
      .object({ id, airframe: z.string(), engine: z.string(), position: z.string(), approval: z.string() })
      .nullable(),
    reason: z.string(),
    events: z.array(declaredEvent),
    paperwork: z.array(paper),
    paperworkMissing: z.array(paper),
    paperworkNote: z.string(),
    evaluationCapMinor: z.int().nullable(),
    preliminaryInspection: z
      .object({ person: z.string(), signedAt: instant, result: z.string(), contentHash: z.string() })
      .nullable(),
    releasedAt: instant.nullable(),
    okToShipAt: instant.nullable(),
    shippedAt: instant.nullable(),
    closedAt: instant.nullable(),
    unitVersion: z.int(),
    times: timesNow.nullable(),
    parts: z.array(partInUnit),
    quotes: z.array(quoteBrief),
    allHolds: z.array(hold),
    looseItems: z.array(looseItem),
    travelers: z.array(travelerBrief),
    findings: z.array(findingBrief),
    openItems: z.array(openItem),
    /** Actions the state tables allow here, whoever may take them. */
    possible: z.array(actionSchema),
  })
  .meta({ id: 'WorkOrderDetail' });

/** What the shop knows of a serial typed at the dock. */
export const returningUnit = z
  .object({
    itemId: id,
    kind: partClass,
    maker: z.string(),
    partNumber: z.string(),
    serial: z.string(),
    modelId: id.nullable(),
    openWorkOrder: z.object({ id, number: z.string(), stage: stageSchema }).nullable(),
    lastTimes: timesNow.nullable(),
    parts: z.array(partInUnit),
    visits: z.array(
      z.object({
        id,
        number: z.string(),
        scope: scopeSchema,
        receivedOn: date,
        stage: stageSchema,
        customer: z.string(),
        reason: z.string(),
      }),
    ),
  })
  .meta({ id: 'ReturningUnit' });

/** One unit waiting for the desk, with how long. */
const deskUnit = z.object({
  workOrder: z.object({ id, number: z.string() }),
  unit: unitNamed,
  customer: z.string(),
  since: instant,
  days: z.int(),
  note: z.string(),
});

const deskQuote = z.object({
  id,
  number: z.string(),
  kind: z.enum(['estimate', 'firm', 'over-and-above']),
  workOrder: z.object({ id, number: z.string() }),
  customer: z.string(),
  totalMinor: z.int(),
  currency: z.string(),
  sentAt: instant,
  days: z.int(),
  validUntil: date,
  nextChaser: z.object({ id, dueOn: date, overdue: z.boolean() }).nullable(),
});

export const deskBoard = z
  .object({
    notLookedAt: z.array(deskUnit),
    toWrite: z.array(deskUnit.extend({ kind: z.enum(['estimate', 'firm', 'over-and-above']) })),
    quotesOut: z.array(deskQuote),
    overAndAboveWaiting: z.array(deskQuote),
    overdueAnswers: z.array(deskQuote),
    promisesAtRisk: z.array(deskUnit.extend({ promisedOn: date, daysLeft: z.int() })),
    toShip: z.array(deskUnit),
  })
  .meta({ id: 'DeskBoard' });

export const managerBoard = z
  .object({
    units: z.array(
      z.object({
        workOrder: z.object({ id, number: z.string() }),
        unit: unitNamed,
        customer: z.string(),
        scope: scopeSchema,
        stage: stageSchema,
        consent: consentSchema,
        since: instant,
        daysInStage: z.int(),
        daysInHouse: z.int(),
        promisedOn: date.nullable(),
        late: z.boolean(),
        /** Reasons of open holds, or what the state waits for. */
        heldBy: z.array(z.string()),
        ball: ballHolder,
      }),
    ),
    /** True when more units are in the house than one page shows. */
    more: z.boolean(),
    /** Finished units by month of shipping, oldest first; days from receipt to shipping. */
    turnaround: z.array(
      z.object({
        month: z.string(),
        scope: scopeSchema,
        units: z.int(),
        medianDays: z.int(),
        longestDays: z.int(),
        kept: z.int(),
        promised: z.int(),
      }),
    ),
  })
  .meta({ id: 'ManagerBoard' });
