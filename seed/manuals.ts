import { noBladeRules } from '@hubwright/contracts/manuals/measures';
import { noServiceLimits } from '@hubwright/contracts/manuals/service-limits';
import type { Scope } from '@hubwright/contracts/manuals/words';
import { issueProgram } from '../apps/server/src/modules/governor-tests/issue-program.command.ts';
import { addApplication } from '../apps/server/src/modules/manuals/add-application.command.ts';
import { addDocument } from '../apps/server/src/modules/manuals/add-document.command.ts';
import { addManual } from '../apps/server/src/modules/manuals/add-manual.command.ts';
import { addModel } from '../apps/server/src/modules/manuals/add-model.command.ts';
import { checkCurrency } from '../apps/server/src/modules/manuals/check-currency.command.ts';
import { checkDocument } from '../apps/server/src/modules/manuals/check-document.command.ts';
import { issueDocument } from '../apps/server/src/modules/manuals/issue-document.command.ts';
import { issueRevision } from '../apps/server/src/modules/manuals/issue-revision.command.ts';
import { setFlatRate } from '../apps/server/src/modules/manuals/set-flat-rate.command.ts';
import type { Calendar } from './calendar.ts';
import { documents } from './data/documents.ts';
import { governorPrograms } from './data/governor-programs.ts';
import { boundTo } from './data/manuals/build-sheets.ts';
import type { ContentSeed } from './data/manuals/shapes.ts';
import { models } from './data/models.ts';
import { shop } from './data/shop.ts';
import { presigned, type SeedRun } from './run.ts';

type ModelSeed = (typeof models)[number];
export interface ManualIds {
  readonly models: ReadonlyMap<string, string>;
  readonly manuals: ReadonlyMap<string, string>;
  /** By designation, airframe and position. */
  readonly applications: ReadonlyMap<string, string>;
}

/** Manuals, models, applications, rates and revisions. A revision issued before the shop's beginning was entered then. */
export async function seedManuals(run: SeedRun, calendar: Calendar): Promise<ManualIds> {
  const ids = {
    models: new Map<string, string>(),
    manuals: new Map<string, string>(),
    applications: new Map<string, string>(),
  };
  for (const seed of models) {
    const { id: manualId } = await run.run(addManual, seed.manual, { by: 'inspector' });
    ids.manuals.set(seed.manual.number, manualId);
    const { id: modelId } = await run.run(addModel, { ...seed.model, manualId }, { by: 'manager' });
    ids.models.set(seed.model.designation, modelId);
    await seedModel(run, modelId, { seed, applications: ids.applications });
  }
  await seedDocuments(run, ids.models);
  const revisions = models.flatMap(({ manual, model, revisions }) =>
    revisions.map((revision) => ({ ...revision, manual: manual.number, designation: model.designation })),
  );
  for (const one of revisions) calendar.on(one.issued + 1, 15, () => seedRevision(run, ids, one));
  return ids;
}

/** The papers beside the manuals, each found current when the shop began. */
async function seedDocuments(run: SeedRun, modelIds: ReadonlyMap<string, string>): Promise<void> {
  for (const { models: designations, issues, ...document } of documents) {
    const modelIdsOf = designations.map((designation) => modelIds.get(designation) as string);
    const dated = issues.map(({ issued, ...issue }) => ({ ...issue, issuedOn: run.day(issued) }));
    const [first, ...later] = dated as [(typeof dated)[number], ...typeof dated];
    const added = await run.run(addDocument, { ...document, ...first, modelIds: modelIdsOf }, { by: 'inspector' });
    let current = { id: added.id, version: added.version, issueId: added.issueId };
    for (const issue of later) {
      const { version } = current;
      current = await run.run(issueDocument, { documentId: added.id, ...issue }, { by: 'inspector', version });
    }
    const checked = { issueId: current.issueId, checkedOn: run.now().slice(0, 10), signature: presigned };
    await run.run(checkDocument, checked, { by: 'inspector' });
  }
}

async function seedModel(
  run: SeedRun,
  modelId: string,
  given: { seed: ModelSeed; applications: Map<string, string> },
): Promise<void> {
  const { seed, applications } = given;
  for (const application of seed.applications) {
    const { id } = await run.run(addApplication, { ...application, modelId }, { by: 'inspector' });
    applications.set(`${seed.model.designation} ${application.airframe} ${application.position}`, id);
  }
  for (const [scope, labourMinutes] of Object.entries(seed.flatRates)) {
    const labourMinor = Math.round((labourMinutes * shop.labourRateMinor) / 60);
    await run.run(setFlatRate, { modelId, scope: scope as Scope, labourMinutes, labourMinor }, { by: 'manager' });
  }
}

/** Enters a revision and has an inspector sign that it is current. */
export async function seedRevision(
  run: SeedRun,
  ids: ManualIds,
  one: { manual: string; designation: string; revision: string; issued: number; content: ContentSeed },
): Promise<string> {
  const manualId = ids.manuals.get(one.manual) as string;
  const { tboRules, ...content } = one.content;
  const idsOf = (airframe: string) =>
    [...ids.applications]
      .filter(([name]) => name.startsWith(`${one.designation} ${airframe} `))
      .map(([, applicationId]) => applicationId);
  const rules = tboRules.flatMap(({ airframe, ...rule }) =>
    airframe === undefined ? [rule] : idsOf(airframe).map((applicationId) => ({ ...rule, applicationId })),
  );
  const model = {
    lifeLimits: [],
    bladeRules: noBladeRules,
    serviceLimits: noServiceLimits,
    ...{ ...content, routes: boundTo(content.routes, idsOf) },
    modelId: ids.models.get(one.designation) as string,
    tboRules: rules,
  };
  const input = { manualId, revision: one.revision, issuedOn: run.day(one.issued), models: [model] };
  const { id } = await run.run(issueRevision, input, { by: 'inspector' });
  const signed = { revisionId: id, checkedOn: run.now().slice(0, 10), signature: presigned };
  await run.run(checkCurrency, signed, { by: 'inspector' });
  await seedPrograms(run, ids, { designation: one.designation, revisionId: id });
  return id;
}

/** A governor has a program for each installation, issued with the revision it comes from. */
async function seedPrograms(
  run: SeedRun,
  { applications }: ManualIds,
  { designation, revisionId }: { designation: string; revisionId: string },
): Promise<void> {
  for (const [airframe, program] of Object.entries(designation === 'VG14' ? governorPrograms : {}))
    for (const [name, applicationId] of applications)
      if (name.startsWith(`${designation} ${airframe} `))
        await run.run(
          issueProgram,
          { ...program, revisionId, applicationId, signature: presigned },
          { by: 'inspector' },
        );
}
