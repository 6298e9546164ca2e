import { z } from 'zod';
import { figureShown } from '../customers/operations.ts';
import { read } from '../operation.ts';
import { releaseContent } from '../releases/operations.ts';
import { date, id, instant } from '../values.ts';
import { intervalOperations } from './interval-operations.ts';
import { assemblyAround, itemOnRecord, partInside, timesOnRecord } from './operations.ts';

/** Who may take a unit's whole history out: it names people and holds what they signed. */
const mayTake = ['front-desk', 'inspector', 'manager', 'administrator'] as const;

const order = z.object({ id, number: z.string() });
const person = z.object({ id, displayName: z.string() });

const dataDocument = z
  .object({
    workOrder: order,
    kind: z.string(),
    number: z.string(),
    title: z.string(),
    /** Its revision or issue, as worked to. */
    issue: z.string(),
    issuedOn: date,
  })
  .meta({ id: 'DocumentWorkedTo' });

const releaseRow = z
  .object({
    id,
    number: z.string(),
    workOrder: order,
    word: z.string(),
    releasedAt: instant,
    contentHash: z.string(),
    fileHash: z.string(),
    supersedesId: id.nullable(),
    reason: z.string(),
    supersededById: id.nullable(),
  })
  .meta({ id: 'ReleaseOfUnit' });

const paperRow = z
  .object({
    /** Of the photo or paper: `/api/photos/<id>/file`. */
    id,
    workOrder: order,
    title: z.string(),
    mediaType: z.string(),
    fileHash: z.string(),
    addedAt: instant,
    struckBecause: z.string().nullable(),
  })
  .meta({ id: 'PaperOfUnit' });

const papers = { releases: z.array(releaseRow), documents: z.array(dataDocument), papers: z.array(paperRow) };

const item = itemOnRecord.omit({ version: true });
const times = intervalOperations.itemTimes.output.shape;

const signature = z
  .object({
    id,
    workOrderId: id,
    /** The step it stands at; null for a decision of its own. */
    step: z.object({ id, title: z.string(), traveler: z.string() }).nullable(),
    meaning: z.string(),
    result: z.string(),
    person,
    performedAt: instant,
    signedAt: instant,
    lateReason: z.string().nullable(),
    /** What was signed, as canonical JSON (RFC 8785), and its SHA-256: whoever has the text can compute the hash. */
    content: z.string(),
    contentHash: z.string(),
    supersedesId: id.nullable(),
    countersignsId: id.nullable(),
  })
  .meta({ id: 'SignatureInHistory' });

const workOrder = z
  .object({
    id,
    number: z.string(),
    customer: z.object({ id, name: z.string() }),
    aircraft: z.string().nullable(),
    scope: z.string(),
    stage: z.string(),
    reason: z.string(),
    receivedOn: date,
    shippedAt: instant.nullable(),
    closedAt: instant.nullable(),
    findings: z.array(
      z.object({
        id,
        number: z.string(),
        itemId: id,
        position: z.string(),
        area: z.string(),
        damage: z.string(),
        place: z.string(),
        description: z.string(),
        disposition: z.string().nullable(),
        dispositionNote: z.string(),
        raisedAt: instant,
      }),
    ),
    /** New parts that went into it and stayed. */
    partsReplaced: z.array(
      z.object({ lotId: id, lot: z.string(), part: z.string(), description: z.string(), quantity: z.int() }),
    ),
    signatures: z.array(signature),
  })
  .meta({ id: 'WorkOrderInHistory' });

/** Everything on record of one unit or serialized part, with ids that stay. */
const wholeHistory = z
  .object({
    /** Changes only when a reader of the older one would read it wrongly. */
    format: z.literal('unit-history/1'),
    writtenAt: instant,
    shop: z.string(),
    identity: item.extend({ model: z.object({ id, designation: z.string() }).nullable(), joinedIntoId: id.nullable() }),
    where: times.where,
    parts: z.array(partInside.omit({ version: true })),
    installedIn: z.array(assemblyAround),
    intervals: intervalOperations.aircraftIntervals.output.shape.rows,
    /** Readings of the meters it flew by, in the time it was on them; those that were mistakes are left out. */
    readings: z.array(
      z.object({ id, aircraftId: id, registration: z.string(), meter: z.string(), readOn: date, ...figureShown }),
    ),
    times: z.object({
      asOf: times.asOf,
      sinceNew: times.sinceNew,
      sinceOverhaul: times.sinceOverhaul,
      cyclesSinceNew: times.cyclesSinceNew,
      pieces: times.pieces,
      unknown: times.unknown,
      doubts: times.doubts,
      papers: z.array(timesOnRecord),
    }),
    workOrders: z.array(workOrder),
    releases: z.array(releaseRow.extend({ content: releaseContent })),
    directives: z.array(
      z.object({
        id,
        directiveId: id,
        number: z.string(),
        revision: z.string(),
        title: z.string(),
        itemId: id,
        outcome: z.string(),
        doneOn: date,
        hoursTenths: z.int().nullable(),
        terminating: z.boolean(),
        deferredUntil: date.nullable(),
        method: z.string(),
        workOrderId: id,
        signOffId: id,
        recordedBy: person,
        recordedAt: instant,
      }),
    ),
    documents: papers.documents,
    papers: papers.papers,
  })
  .meta({ id: 'WholeUnitHistory' });
export type WholeUnitHistory = z.output<typeof wholeHistory>;

/** What a unit has on paper, and all of its history as one file. */
export const unitHistoryOperations = {
  unitPapers: read({
    id: 'unit-papers',
    noun: 'units',
    path: '/api/units/:itemId/papers',
    access: 'signed-in',
    summary:
      'Releases, documents worked to and photos and papers of a unit or part, the newest 200 of each, newest first',
    input: z.strictObject({ itemId: id }),
    output: z.object(papers).meta({ id: 'UnitPapers' }),
  }),
  wholeUnitHistory: read({
    id: 'whole-unit-history',
    noun: 'units',
    path: '/api/units/:itemId/whole-history',
    access: mayTake,
    summary:
      'Everything on record of one unit or part, as JSON with ids that stay and the text and hash of every signature',
    input: z.strictObject({ itemId: id }),
    output: wholeHistory,
  }),
  unitHistoryPdf: read({
    id: 'unit-history-pdf',
    noun: 'units',
    path: '/api/units/:itemId/whole-history/pdf',
    access: mayTake,
    summary: 'The same to read and to hand over, as PDF; the texts that were signed are in the JSON, their hashes here',
    input: z.strictObject({ itemId: id }),
    output: z.any(),
    produces: 'application/pdf',
  }),
} as const;
