import { z } from 'zod';
import { command, read } from '../operation.ts';
import { changed, date, decimal, id, line, listOf, note, page, signature } from '../values.ts';
import { bladeRules, measureSpec } from './measures.ts';
import { kitListLine, lifeLimit, revisionInput, routeStep, routeTemplate, tboRule } from './revision.ts';
import { serviceLimits } from './service-limits.ts';
import { material, pitch, scopeSchema, unitKind } from './words.ts';

const model = {
  kind: unitKind,
  maker: line,
  designation: z.string().trim().min(1).max(60),
  bladeCount: z.int().min(2, 'A propeller has at least two blades').max(8).optional(),
  material,
  pitch,
  identityCarriedBy: z.enum(['hub', 'plate']),
  description: note,
};
const modelRow = z
  .object({
    ...model,
    id,
    bladeCount: z.int().nullable(),
    manual: z.object({ id, number: z.string(), title: z.string() }),
    currentRevision: z.object({ id, revision: z.string(), currencyCheckedOn: date.nullable() }).nullable(),
    version: z.int(),
  })
  .meta({ id: 'ModelRow' });

/** Angles and settings of an application as the manual prints them, by name: `low blade angle` → `12.4 ± 0.2 degrees`. */
const settings = z.record(z.string().min(1).max(60), z.string().max(120));
const application = {
  airframe: line,
  engine: line,
  position: z.enum(['single', 'left', 'right', 'center']),
  approval: line,
};
const applicationRow = z
  .object({ ...application, id, modelId: id, settings, leastDiameter: decimal.nullable() })
  .meta({ id: 'ApplicationRow' });
const flatRateRow = z
  .object({ scope: scopeSchema, labourMinutes: z.int(), labourMinor: z.int() })
  .meta({ id: 'FlatRateRow' });

const revisionRow = z
  .object({
    id,
    revision: z.string(),
    issuedOn: date,
    state: z.enum(['current', 'superseded']),
    currencyCheckedBy: z.string().nullable(),
    currencyCheckedOn: date.nullable(),
    version: z.int(),
  })
  .meta({ id: 'RevisionRow' });
const manual = { number: z.string().trim().min(1).max(40), title: line, maker: line };
const manualRow = z
  .object({ ...manual, id, kind: z.string(), revisions: z.array(revisionRow) })
  .meta({ id: 'ManualRow' });

const shownStep = z.object({ ...routeStep.shape, measures: z.array(z.object(measureSpec.shape)) });
const revisionDetail = revisionRow
  .extend({
    manual: z.object({ id, number: z.string(), title: z.string() }),
    models: z.array(
      z.object({
        modelId: id,
        designation: z.string(),
        kitList: z.array(z.object({ ...kitListLine.shape, id, sequence: z.int(), description: z.string() })),
        routes: z.array(z.object({ ...routeTemplate.shape, id, steps: z.array(shownStep) })),
        tboRules: z.array(z.object(tboRule.shape)),
        lifeLimits: z.array(z.object(lifeLimit.shape)),
        bladeRules,
        serviceLimits,
      }),
    ),
  })
  .meta({ id: 'RevisionDetail' });

const keepers = ['manager', 'administrator'] as const;

export const manualOperations = {
  listModels: read({
    id: 'list-models',
    noun: 'manuals',
    path: '/api/models',
    access: 'signed-in',
    summary: 'Propeller and governor models, by maker and designation',
    input: z.strictObject({ ...page, search: z.string().max(100).optional() }),
    output: listOf(modelRow),
  }),
  showModel: read({
    id: 'show-model',
    noun: 'manuals',
    path: '/api/models/:modelId',
    access: 'signed-in',
    summary: 'One model with its applications and flat rates',
    input: z.strictObject({ modelId: id }),
    output: modelRow
      .extend({ applications: z.array(applicationRow), flatRates: z.array(flatRateRow) })
      .meta({ id: 'ModelDetail' }),
  }),
  addModel: command({
    id: 'add-model',
    noun: 'manuals',
    path: '/api/models',
    access: keepers,
    summary: 'Add a model and name its manual',
    input: z
      .strictObject({ ...model, description: note.default(''), manualId: id })
      .refine((given) => (given.kind === 'propeller') === (given.bladeCount !== undefined), {
        message: 'A propeller has a blade count, a governor has none',
        path: ['bladeCount'],
      }),
    output: changed,
  }),
  addApplication: command({
    id: 'add-application',
    noun: 'manuals',
    path: '/api/models/:modelId/applications',
    access: [...keepers, 'inspector'],
    summary: 'Add an aircraft, engine and position this model is approved for',
    input: z.strictObject({
      ...application,
      modelId: id,
      settings,
      /** The smallest propeller diameter the installation is approved with. */
      leastDiameter: decimal.optional(),
    }),
    output: changed,
  }),
  setFlatRate: command({
    id: 'set-flat-rate',
    noun: 'manuals',
    method: 'PUT',
    path: '/api/models/:modelId/flat-rates/:scope',
    access: keepers,
    summary: 'Set the flat-rate labour of a scope',
    input: z.strictObject({
      modelId: id,
      scope: scopeSchema,
      labourMinutes: z.int().min(0).max(60_000),
      labourMinor: z.int().min(0).max(100_000_000),
    }),
    output: changed,
  }),
  listManuals: read({
    id: 'list-manuals',
    noun: 'manuals',
    path: '/api/manuals',
    access: 'signed-in',
    summary: 'Manuals with their revisions, newest first',
    input: z.strictObject({ ...page, search: z.string().max(100).optional() }),
    output: listOf(manualRow),
  }),
  addManual: command({
    id: 'add-manual',
    noun: 'manuals',
    path: '/api/manuals',
    access: [...keepers, 'inspector'],
    summary: 'Add a manual the shop holds',
    input: z.strictObject({ ...manual, kind: z.enum(['overhaul', 'blade', 'standard-practice']) }),
    output: changed,
  }),
  showRevision: read({
    id: 'show-revision',
    noun: 'manuals',
    path: '/api/manual-revisions/:revisionId',
    access: 'signed-in',
    summary: 'The whole content of a revision: kit lists, routes with limits, time between overhauls',
    input: z.strictObject({ revisionId: id }),
    output: revisionDetail,
  }),
  issueRevision: command({
    id: 'issue-revision',
    noun: 'manuals',
    path: '/api/manuals/:manualId/revisions',
    access: [...keepers, 'inspector'],
    summary: 'Enter a whole revision; it becomes current and supersedes the one before',
    input: z.strictObject({ manualId: id, ...revisionInput }),
    output: changed.extend({ superseded: id.nullable() }).meta({ id: 'RevisionIssued' }),
    touches: ['work-orders', 'kits'],
    problems: ['unknown-part', 'line-wrong'],
  }),
  checkCurrency: command({
    id: 'check-currency',
    noun: 'manuals',
    path: '/api/manual-revisions/:revisionId/check-currency',
    access: ['inspector'],
    summary: 'Sign that a revision is the current one',
    signs: 'I checked with the maker that this is the current revision of this manual',
    input: z.strictObject({ revisionId: id, checkedOn: date, signature }),
    output: changed,
    problems: ['revision-superseded'],
  }),
} as const;
