import { z } from 'zod';
import { overhaulFact, scopeSchema } from '../manuals/words.ts';
import { command, read } from '../operation.ts';
import { roleSchema } from '../roles.ts';
import { changed, date, id, instant, line, listOf, note, page, signature } from '../values.ts';
import { who } from '../work-orders/traveler-shapes.ts';

/** What a record may call the work. Computed, never chosen. */
export const recordWords = ['inspected', 'repaired', 'overhauled'] as const;
export const recordWord = z.enum(recordWords).meta({ id: 'RecordWord' });
export type RecordWord = (typeof recordWords)[number];

export const openKinds = [
  'stage',
  'hold',
  'identity',
  'step',
  'finding',
  'kit',
  'over-and-above',
  'revision',
  'instrument',
  'position',
  'life-limit',
  'directive',
  'record',
] as const;

const openItem = z
  .object({
    kind: z.enum(openKinds),
    what: z.string(),
    /** Who can close it: any of these roles, or people by name where an authorisation decides. */
    closedBy: z.object({ roles: z.array(roleSchema), people: z.array(z.string()) }),
    /** The thing itself, to open it. */
    subject: z.object({ kind: z.string(), id }).nullable(),
  })
  .meta({ id: 'ReleaseOpenItem' });

/** One of the six facts of 14 CFR 43.2(a)(1) and the signed steps that show it. */
const factShown = z
  .object({
    fact: overhaulFact,
    steps: z.array(z.object({ stepId: id, traveler: z.string(), title: z.string(), by: z.string(), on: date })),
  })
  .meta({ id: 'FactShown' });

const checklist = z
  .object({
    workOrder: z.object({ id, number: z.string(), scope: scopeSchema, stage: z.string(), version: z.int() }),
    ready: z.boolean(),
    open: z.array(openItem),
    word: recordWord,
    /** Why the record says this word. */
    wordBasis: z.string(),
    facts: z.array(factShown),
    /** Set when the asking person cannot approve, and why. */
    notYou: z.string().nullable(),
    caution: z.string(),
  })
  .meta({ id: 'ReleaseChecklist' });

/** The record of the work: content of 14 CFR 43.9(a), and what the owner needs for 91.417(a). */
export const releaseContent = z
  .object({
    number: z.string(),
    /** The release this one corrects, and why; absent on a first one. */
    supersedes: z.object({ number: z.string(), reason: z.string() }).optional(),
    workOrder: z.string(),
    customer: z.string(),
    aircraft: z.string().nullable(),
    unit: z.object({
      kind: z.string(),
      maker: z.string(),
      model: z.string(),
      partNumber: z.string(),
      serial: z.string(),
    }),
    parts: z.array(
      z.object({
        position: z.string(),
        partNumber: z.string(),
        serial: z.string(),
        sinceNew: z.string(),
        sinceOverhaul: z.string(),
      }),
    ),
    word: recordWord,
    /** 43.9(a)(1) */
    description: z.string(),
    dataReferences: z.array(z.string()),
    /** 43.9(a)(2) */
    completedOn: date,
    /** 43.9(a)(3) */
    performedBy: z.array(z.string()),
    /** 43.9(a)(4) */
    approvedBy: z.object({
      name: z.string(),
      certificateNumber: z.string(),
      certificateKind: z.string(),
      /** The person’s own, as it was at the signature, where the authority asks for it. */
      personCertificate: z.string().optional(),
      signedAt: instant,
    }),
    findings: z.array(
      z.object({ number: z.string(), part: z.string(), description: z.string(), disposition: z.string() }),
    ),
    partsReplaced: z.array(z.object({ part: z.string(), description: z.string(), quantity: z.int(), lot: z.string() })),
    remarks: z.string(),
    times: z.object({ sinceNew: z.string(), sinceOverhaul: z.string() }),
    facts: z.array(z.object({ fact: overhaulFact, shown: z.boolean() })),
    statement: z.string(),
    caution: z.string(),
  })
  .meta({ id: 'ReleaseContent' });
export type ReleaseContent = z.output<typeof releaseContent>;

const releaseRow = z
  .object({
    id,
    number: z.string(),
    workOrder: z.object({ id, number: z.string() }),
    unit: z.object({ designation: z.string(), serial: z.string() }),
    customer: z.string(),
    word: recordWord,
    releasedAt: instant,
    approvedBy: who,
    fileHash: z.string(),
    contentHash: z.string(),
    version: z.int(),
    /** The release this one corrects, and why. */
    supersedes: z.object({ id, number: z.string(), reason: z.string() }).nullable(),
    /** The release that took its place. */
    supersededBy: z.object({ id, number: z.string() }).nullable(),
  })
  .meta({ id: 'ReleaseRow' });

export const releaseOperations = {
  releaseChecklist: read({
    id: 'release-checklist',
    noun: 'releases',
    path: '/api/work-orders/:workOrderId/release-checklist',
    access: 'signed-in',
    summary: 'Everything still open before return to service, by name, with who can close it',
    input: z.strictObject({ workOrderId: id }),
    output: checklist,
  }),
  approveRelease: command({
    id: 'approve-release',
    noun: 'releases',
    path: '/api/work-orders/:workOrderId/release',
    access: ['inspector'],
    versioned: true,
    summary: 'Approve the unit for return to service; the record is made, archived and signed',
    input: z.strictObject({
      workOrderId: id,
      /** Added to the description made from the record. */
      remarks: note.default(''),
      /** When the work was completed; the day of the last signed step when absent. */
      completedOn: date.optional(),
      signature,
    }),
    output: changed
      .extend({ releaseId: id, number: z.string(), word: recordWord, fileHash: z.string(), stage: z.string() })
      .meta({ id: 'Released' }),
    signs: 'I inspected this unit and approve it for return to service with respect to the work performed',
    touches: ['work-orders', 'units', 'due-dates'],
    problems: ['release-blocked', 'record-incomplete', 'already-released', 'own-inspection', 'wrong-state'],
  }),
  correctRelease: command({
    id: 'correct-release',
    noun: 'releases',
    path: '/api/releases/:releaseId/correct',
    access: ['inspector'],
    summary: 'Correct the words of a release: a new version is signed and archived, the old one stays and is marked',
    input: z.strictObject({
      releaseId: id,
      /** What was wrong with it. */
      reason: line,
      /** The description of the work, 43.9(a)(1), in its new words; as it was when absent. The unit is never corrected here. */
      description: note.min(1, 'The description cannot be empty').optional(),
      remarks: note.optional(),
      statement: z.string().trim().min(1, 'The statement cannot be empty').max(2000).optional(),
      signature,
    }),
    output: changed
      .extend({ number: z.string(), word: recordWord, fileHash: z.string() })
      .meta({ id: 'ReleaseCorrected' }),
    signs: 'I correct this release for the reason given and approve the unit for return to service as it now says',
    touches: ['work-orders'],
    problems: ['release-superseded', 'nothing-corrected', 'record-incomplete', 'own-inspection'],
  }),
  listReleases: read({
    id: 'list-releases',
    noun: 'releases',
    path: '/api/releases',
    access: 'signed-in',
    summary: 'Releases, newest first',
    input: z.strictObject({ ...page, workOrderId: id.optional() }),
    output: listOf(releaseRow),
  }),
  release: read({
    id: 'release',
    noun: 'releases',
    path: '/api/releases/:releaseId',
    access: 'signed-in',
    summary: 'One release with the record’s content as it was signed',
    input: z.strictObject({ releaseId: id }),
    output: releaseRow.extend({ content: releaseContent }).meta({ id: 'ReleaseDetail' }),
  }),
  releasePdf: read({
    id: 'release-pdf',
    noun: 'releases',
    path: '/api/releases/:releaseId/pdf',
    access: 'signed-in',
    summary: 'The archived release as PDF, byte for byte as it was signed',
    input: z.strictObject({ releaseId: id }),
    output: z.any(),
    produces: 'application/pdf',
  }),
} as const;
