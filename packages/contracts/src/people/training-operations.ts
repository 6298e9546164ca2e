import { z } from 'zod';
import { command, read } from '../operation.ts';
import { changed, date, id, line } from '../values.ts';
import { authorisationLevelSchema } from './authorisation-levels.ts';
import { processSchema } from './operations.ts';

const ofMinutes = z.int().min(5, 'A training takes at least five minutes').max(60_000);

export const trainingKinds = ['initial', 'recurrent', 'on-the-job'] as const;
const trainingKind = z.enum(trainingKinds).meta({ id: 'TrainingKind' });
export type TrainingKind = (typeof trainingKinds)[number];

/** Only `passed` makes an authorisation current. */
export const trainingResults = ['passed', 'failed', 'attended'] as const;
const trainingResult = z.enum(trainingResults).meta({ id: 'TrainingResult' });
export type TrainingResult = (typeof trainingResults)[number];

const itemFields = {
  title: line,
  /** Null: once is enough. */
  everyMonths: z.int().min(1).max(120).nullable(),
  /** Nobody performs, inspects or approves these without it. */
  processes: z.array(processSchema).max(20),
};
const trainingItem = z
  .object({ id, ...itemFields, active: z.boolean(), version: z.int() })
  .meta({ id: 'TrainingItem' });

const logged = {
  /** One of the shop’s list; without it, `title` says what it was. */
  itemId: id.optional(),
  title: line.optional(),
  kind: trainingKind,
  /** The instructor or the school. */
  givenBy: line,
  heldOn: date,
  minutes: ofMinutes,
  result: trainingResult,
  /** The last good day, when it is not the one the item’s months give. */
  dueOn: date.optional(),
  /** The paper, from an upload’s reply. */
  fileId: id.optional(),
};

const trainingRow = z
  .object({
    id,
    itemId: id.nullable(),
    title: z.string(),
    kind: trainingKind,
    givenBy: z.string(),
    heldOn: date,
    minutes: z.int(),
    result: trainingResult,
    dueOn: date.nullable(),
    /** The name of the paper kept with it. */
    paper: z.string().nullable(),
    supersedesId: id.nullable(),
    supersededById: id.nullable(),
    reason: z.string(),
    recordedBy: z.string(),
  })
  .meta({ id: 'TrainingRow' });

/** Work under supervision, by process: what a trainee’s countersigned steps add up to. */
const supervisedWork = z
  .object({
    process: processSchema,
    steps: z.int(),
    /** By the steps’ standard times. */
    minutes: z.int(),
    /** By their own clock on those steps, loads left out; 0 where it did not run. */
    clockedMinutes: z.int(),
    first: date,
    last: date,
    supervisors: z.array(z.string()),
  })
  .meta({ id: 'SupervisedWork' });

/** What an authorisation still asks for. `ranOutOn` is the last day on which the training counted. */
const missingTraining = z
  .object({ itemId: id, title: z.string(), ranOutOn: date.nullable() })
  .meta({ id: 'MissingTraining' });

const logging = ['training-unnamed', 'training-in-future', 'training-due-wrong', 'upload-gone'] as const;
const leaders = ['manager', 'administrator'] as const;

const trainingLog = z
  .object({
    rows: z.array(trainingRow),
    /** Authorisations that cannot be used, and why. */
    notCurrent: z.array(
      z.object({ process: processSchema, level: authorisationLevelSchema, missing: z.array(missingTraining) }),
    ),
    supervised: z.array(supervisedWork),
  })
  .meta({ id: 'TrainingLog' });

/** Training, who supervises whom, and who may inspect. */
export const trainingOperations = {
  listTrainingItems: read({
    id: 'list-training-items',
    noun: 'people',
    path: '/api/training-items',
    access: ['manager', 'administrator', 'inspector'],
    summary: 'The trainings of this shop, and which authorisations need each',
    input: z.strictObject({}),
    output: z.object({ rows: z.array(trainingItem) }),
  }),
  addTrainingItem: command({
    id: 'add-training-item',
    noun: 'people',
    path: '/api/training-items',
    access: ['administrator'],
    summary: 'Name a training, how often it comes again, and the processes nobody is authorised for without it',
    input: z.strictObject(itemFields),
    output: changed,
    problems: ['training-named'],
  }),
  changeTrainingItem: command({
    id: 'change-training-item',
    noun: 'people',
    method: 'PUT',
    path: '/api/training-items/:itemId',
    access: ['administrator'],
    versioned: true,
    summary: 'Change what a training is needed for, how often, or end it; what was logged stays as it was',
    input: z.strictObject({ itemId: id, ...itemFields, active: z.boolean(), reason: line }),
    output: changed,
    problems: ['training-named'],
  }),
  logTraining: command({
    id: 'log-training',
    noun: 'people',
    path: '/api/people/:personId/training',
    access: leaders,
    touches: ['work-orders'],
    summary: 'Put a training of a person into their log, with its paper if there is one',
    input: z.strictObject({ personId: id, ...logged }),
    output: changed.extend({ dueOn: date.nullable() }),
    problems: [...logging, 'has-left'],
  }),
  correctTraining: command({
    id: 'correct-training',
    noun: 'people',
    path: '/api/training/:trainingId/correct',
    access: leaders,
    touches: ['work-orders'],
    summary: 'Supersede a wrong line of a training log by a right one, with the reason; both stay',
    input: z.strictObject({
      trainingId: id,
      ...logged,
      reason: z.string().trim().min(3, 'Say what was wrong').max(200),
    }),
    output: changed.extend({ dueOn: date.nullable() }),
    problems: [...logging, 'already-corrected'],
  }),
  trainingLog: read({
    id: 'training-log',
    noun: 'people',
    path: '/api/people/:personId/training',
    access: ['manager', 'administrator', 'inspector'],
    summary: 'A person’s trainings, newest first, what their authorisations lack, and their work under supervision',
    input: z.strictObject({ personId: id }),
    output: trainingLog,
  }),
  ownTraining: read({
    id: 'own-training',
    noun: 'people',
    path: '/api/session/training',
    access: 'signed-in',
    summary: 'One’s own trainings, what one’s authorisations lack, and one’s work under supervision',
    input: z.strictObject({}),
    output: trainingLog,
  }),
  trainingPaper: read({
    id: 'training-paper',
    noun: 'people',
    path: '/api/training/:trainingId/paper',
    access: ['manager', 'administrator', 'inspector'],
    summary: 'The paper kept with a training',
    input: z.strictObject({ trainingId: id }),
    output: z.any(),
    produces: '*/*',
    problems: ['file-damaged'],
  }),
  trainingDue: read({
    id: 'training-due',
    noun: 'people',
    path: '/api/training-due',
    access: ['manager', 'administrator', 'inspector'],
    summary:
      'Trainings that authorisations rest on and that have run out, are missing, or will be due within so many days',
    input: z.strictObject({ withinDays: z.coerce.number().int().min(1).max(366).default(90) }),
    output: z.object({
      rows: z.array(
        z
          .object({
            personId: id,
            person: z.string(),
            itemId: id,
            title: z.string(),
            processes: z.array(processSchema),
            /** Null: never passed. */
            dueOn: date.nullable(),
          })
          .meta({ id: 'TrainingDueRow' }),
      ),
    }),
  }),
  inspectionLists: read({
    id: 'inspection-lists',
    noun: 'people',
    path: '/api/inspection-lists',
    access: ['manager', 'administrator', 'inspector'],
    summary: 'For which processes the shop names who may inspect, beside the authorisation',
    input: z.strictObject({}),
    output: z.object({
      rows: z.array(
        z
          .object({
            process: processSchema,
            people: z.array(z.object({ id, displayName: z.string() })),
            version: z.int(),
          })
          .meta({ id: 'InspectionList' }),
      ),
    }),
  }),
  setInspectionList: command({
    id: 'set-inspection-list',
    noun: 'people',
    method: 'PUT',
    path: '/api/inspection-lists/:process',
    access: ['administrator'],
    touches: ['work-orders'],
    summary: 'Name who may inspect work of a process; nobody named means everyone authorised to inspect it',
    input: z.strictObject({ process: processSchema, personIds: z.array(id).max(50), reason: line }),
    output: z.object({ process: processSchema, version: z.int() }),
    problems: ['not-an-inspector'],
  }),
  supervision: read({
    id: 'supervision',
    noun: 'people',
    path: '/api/supervision/:process',
    access: 'signed-in',
    summary: 'Whether the asking person does work of a process under supervision only, and who may supervise it',
    input: z.strictObject({ process: processSchema }),
    output: z
      .object({
        needed: z.boolean(),
        supervisors: z.array(z.object({ id, displayName: z.string(), hasPin: z.boolean() })),
      })
      .meta({ id: 'Supervision' }),
  }),
} as const;
