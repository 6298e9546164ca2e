import { z } from 'zod';
import { levelSchema, processSchema } from '../people/operations.ts';
import { date, id, line } from '../values.ts';
import { bladeRules, measureSpec, noBladeRules, peeningSpec } from './measures.ts';
import { noServiceLimits, serviceLimits, useCategory } from './service-limits.ts';
import { sheetSpec } from './sheets.ts';
import { coatedAfterBalance, weightsWithoutLine } from './static-balance-sheet.ts';
import {
  declaredEvent,
  equipmentKind,
  instrumentKind,
  lineSource,
  material,
  overhaulFact,
  partClass,
  phase,
  scopeSchema,
  stepKind,
} from './words.ts';

const scopesOfLine = z.array(scopeSchema).min(1, 'Name at least one scope');
const partNumber = z.string().trim().min(1, 'Name the part number').max(60);
const serialBound = z.string().trim().min(1).max(40);

/** One line of the parts list: what belongs at a position, for which scopes and serials. `minimum` makes it an as-needed line. */
export const kitListLine = z
  .strictObject({
    part: partNumber,
    position: line,
    scopes: scopesOfLine,
    per: z.enum(['unit', 'blade']),
    quantity: z.int().min(1, 'A line asks for at least one piece').max(100_000),
    minimum: z.int().min(0).max(100_000).optional(),
    source: lineSource,
    serialFrom: serialBound.optional(),
    serialTo: serialBound.optional(),
  })
  .refine((given) => given.minimum === undefined || given.minimum <= given.quantity, {
    message: 'The least cannot be more than the most',
    path: ['minimum'],
  })
  .meta({ id: 'KitListLine' });

/** One entry of a process form. `unit` makes it a number, `confirm` a tick of its own that nobody else sets. */
export const formField = z
  .strictObject({
    name: line,
    unit: z.string().trim().min(1).max(20).optional(),
    confirm: z.literal(true).optional(),
  })
  .refine(({ unit, confirm }) => unit === undefined || confirm === undefined, {
    message: 'A confirmation has no unit',
    path: ['unit'],
  })
  .meta({ id: 'FormField' });
export type FormField = z.output<typeof formField>;
/** What a confirmed entry says in the signed form. */
export const confirmed = 'confirmed';

/** One step of a route. A step of kind `measure` names what to measure; the others measure nothing. */
export const routeStep = z
  .strictObject({
    title: line,
    instruction: z.string().trim().max(1000).default(''),
    process: processSchema,
    level: levelSchema,
    kind: stepKind,
    phase,
    standardMinutes: z.int().min(0).max(10_000),
    /** Only for units with one of these events declared; empty for every unit. */
    events: z.array(declaredEvent).max(6).default([]),
    /** Only when the blades are shortened on this visit. */
    whenShortened: z.boolean().default(false),
    /** Neighbours of different branches go on side by side; a step without a branch waits for all before it. */
    branch: z.string().trim().min(1).max(40).optional(),
    /** Time that needs no hands, from the end of the work: cure, bake, soak. What is behind it waits. */
    waitMinutes: z.int().min(0).max(20_160).default(0),
    /** Done by an outside vendor: the part goes out and comes back before it is signed. */
    outside: z.boolean().default(false),
    /** Done to many parts at once, as one tank or oven load is. */
    batched: z.boolean().default(false),
    /** Special tools by the number the manual gives them. */
    tools: z.array(z.string().trim().min(1).max(40)).max(10).default([]),
    /** How often a failure of this step may be repaired before the part is accepted or rejected. */
    mostRepairs: z.int().min(0).max(9).default(2),
    instrumentKind: instrumentKind.optional(),
    /** Done in or with one of this kind: the signature names which, and it must be fit at the time of the work. */
    equipmentKind: equipmentKind.optional(),
    /** Part numbers of resin, film and the like whose lot the signature names. */
    materials: z.array(partNumber).max(6).default([]),
    caution: z.string().trim().min(1).max(300).optional(),
    fact: overhaulFact.optional(),
    /** Further entries of the process form, signed with the step: bath, lot, temperature, programme. */
    form: z.array(formField).max(20).default([]),
    measures: z.array(measureSpec).max(120).default([]),
    peening: peeningSpec.optional(),
    sheet: sheetSpec.optional(),
  })
  .refine((given) => given.sheet?.kind !== 'bake' || (given.process === 'plating' && given.kind === 'work'), {
    message: 'A relief bake belongs to plating',
    path: ['sheet'],
  })
  .refine((given) => given.sheet?.kind !== 'cure' || (given.process === 'blade-repair' && given.kind === 'work'), {
    message: 'A cure belongs to blade repair',
    path: ['sheet'],
  })
  .refine((given) => given.sheet?.kind !== 'governor-test' || given.process === 'governor-bench', {
    message: 'A governor is tested on the governor bench',
    path: ['sheet'],
  })
  .refine((given) => given.sheet?.kind !== 'eddy-current' || given.process === 'non-destructive-test', {
    message: 'An eddy-current set-up belongs to non-destructive test',
    path: ['sheet'],
  })
  .refine((given) => given.sheet?.kind !== 'angles' || given.process === 'blade-angles', {
    message: 'Blade angles belong to setting blade angles',
    path: ['sheet'],
  })
  .refine((given) => given.sheet?.kind !== 'angles' || given.caution !== undefined, {
    message: 'A propeller cycled on air needs its caution',
    path: ['caution'],
  })
  .refine((given) => given.sheet?.kind !== 'function-test' || given.phase === 'build' || given.phase === 'final', {
    message: 'A function test is made of what is built',
    path: ['sheet'],
  })
  .refine((given) => given.sheet?.kind !== 'torque' || given.instrumentKind === 'torque-wrench', {
    message: 'What is torqued is signed with a torque wrench',
    path: ['instrumentKind'],
  })
  .refine((given) => given.sheet?.kind !== 'charge' || given.instrumentKind === 'pressure-gauge', {
    message: 'A charge is signed with a pressure gauge',
    path: ['instrumentKind'],
  })
  .refine((given) => given.sheet?.kind !== 'charge' || given.caution !== undefined, {
    message: 'Stored pressure injures: say the caution',
    path: ['caution'],
  })
  .refine((given) => given.sheet?.kind !== 'static-balance' || given.process === 'static-balance', {
    message: 'A sheet of static weights belongs to static balance',
    path: ['sheet'],
  })
  .refine((given) => given.sheet === undefined || given.sheet.kind === 'bake' || !given.batched, {
    message: 'Of sheets only the chart of a bake is one for a load',
    path: ['sheet'],
  })
  .refine((given) => (given.kind === 'measure') === given.measures.length > 0, {
    message: 'A measured step names what to measure, and only a measured step does',
    path: ['measures'],
  })
  .refine((given) => given.peening === undefined || (given.process === 'shot-peening' && !given.batched), {
    message: 'Strips belong to shot peening, which has lots of its own',
    path: ['peening'],
  })
  .refine((given) => !given.form.some(({ confirm }) => confirm) || (!given.batched && given.peening === undefined), {
    message: 'A confirmation is made part by part, not for a load',
    path: ['form'],
  })
  .refine((given) => given.materials.length === 0 || !given.batched, {
    message: 'Lots of material are named part by part',
    path: ['materials'],
  })
  .refine((given) => !given.batched || given.kind === 'work', {
    message: 'A load is work; what is measured or inspected is signed part by part',
    path: ['batched'],
  })
  .meta({ id: 'RouteStep' });

export const routeTemplate = z
  .strictObject({
    partClass,
    title: line,
    /** What parts of this route are made of, where that decides the work. */
    material: material.optional(),
    scopes: scopesOfLine,
    steps: z.array(routeStep).min(1).max(80),
  })
  .superRefine((given, context) => {
    const at = coatedAfterBalance(given);
    if (at === undefined) return;
    const message = 'Static balance comes after every coating of its route';
    context.addIssue({ code: 'custom', message, path: ['steps', at, 'process'] });
  })
  .meta({ id: 'RouteTemplate' });

const tboBound = z.string().trim().regex(/\d$/, 'A bound of a serial range ends in digits').max(60);

/** Time between overhauls: hours, months or both; whichever comes first. */
export const tboRule = z
  .strictObject({
    applicationId: id.optional(),
    hoursTenths: z.int().min(1).max(2_000_000).optional(),
    months: z.int().min(1).max(600).optional(),
    endOfMonth: z.boolean().default(false),
    requirement: z.enum(['recommended', 'required']),
    /** Only for serials from and to, both included; a serial that cannot be compared counts as one of them. */
    serialFrom: tboBound.optional(),
    serialTo: tboBound.optional(),
    /** Only for this use, and then in place of the rules for every use; while the use is not known every rule counts. */
    useCategory: useCategory.optional(),
    /** Only for units of this age since new on the day of their last overhaul; while the age is not known the rule counts. */
    ageFromMonths: z.int().min(1).max(1200).optional(),
    ageToMonths: z.int().min(1).max(1200).optional(),
  })
  .refine((given) => given.hoursTenths !== undefined || given.months !== undefined, {
    message: 'Give hours, months or both',
  })
  .refine(({ ageFromMonths, ageToMonths }) => ageToMonths === undefined || ageToMonths > (ageFromMonths ?? 0), {
    message: 'The age it ends at is above the one it begins at',
    path: ['ageToMonths'],
  })
  .meta({ id: 'TboRule' });

/**
 * A part retired at a total since new: hours, cycles, overhauls or several. A release is refused at it and while the total is unknown. Limited
 * to five overhauls it may serve out the time after its fifth, and is not overhauled a sixth time.
 */
export const lifeLimit = z
  .strictObject({
    partNumber,
    hoursTenths: z.int().min(1).max(2_000_000).optional(),
    cycles: z.int().min(1).max(10_000_000).optional(),
    overhauls: z.int().min(1).max(1000).optional(),
  })
  .refine(({ hoursTenths, cycles, overhauls }) => [hoursTenths, cycles, overhauls].some((one) => one !== undefined), {
    message: 'Give hours, cycles, overhauls or several of them',
  })
  .meta({ id: 'LifeLimit' });

/** All that a revision says about one model. */
export const modelContent = z
  .strictObject({
    modelId: id,
    kitList: z.array(kitListLine).max(400),
    routes: z.array(routeTemplate).max(60),
    tboRules: z.array(tboRule).max(40),
    lifeLimits: z.array(lifeLimit).max(100).default([]),
    bladeRules: bladeRules.default(noBladeRules),
    serviceLimits: serviceLimits.default(noServiceLimits),
  })
  .superRefine((given, context) => {
    const parts = weightsWithoutLine(given);
    if (parts.length === 0) return;
    const message = `Static weights need a line of the kit list that may stay at none: ${parts.join(', ')}`;
    context.addIssue({ code: 'custom', message, path: ['kitList'] });
  })
  .meta({ id: 'RevisionForModel' });
export type ModelContent = z.output<typeof modelContent>;

/** A whole revision in one input, so that no half of one is ever current. */
export const revisionInput = {
  revision: z.string().trim().min(1).max(20),
  issuedOn: date,
  models: z.array(modelContent).min(1).max(20),
};
