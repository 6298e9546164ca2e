import type { ModelContent } from '@hubwright/contracts/manuals/revision';
import { normaliseSerial } from '@hubwright/rules/identity';
import type { Tx } from '../../platform/database/client.ts';

interface Content {
  readonly models: readonly ModelContent[];
  /** By part number in capitals. */
  readonly partIds: ReadonlyMap<string, string>;
}
type Writing = { readonly tx: Tx; newId(): string };

/** Writes kit lists, routes with steps and measures, rules and life limits of a revision: one statement per table. */
export async function writeContent(context: Writing, revisionId: string, content: Content): Promise<void> {
  const { tx, newId } = context;
  await tx.kitListLine.createMany({
    data: content.models.flatMap(({ modelId, kitList }) =>
      kitList.map(({ part, minimum, serialFrom, serialTo, ...line }, index) => ({
        ...line,
        id: newId(),
        revisionId,
        modelId,
        sequence: index + 1,
        partId: content.partIds.get(part.toUpperCase()) as string,
        minimum: minimum ?? null,
        serialFrom: serialFrom ? normaliseSerial(serialFrom) : null,
        serialTo: serialTo ? normaliseSerial(serialTo) : null,
      })),
    ),
  });
  await writeRoutes(context, revisionId, content.models);
  await writeLimits(context, revisionId, content.models);
  await tx.bladeRules.createMany({
    data: content.models.map(({ modelId, bladeRules }) => ({ id: newId(), revisionId, modelId, content: bladeRules })),
  });
  await tx.serviceLimits.createMany({
    data: content.models.map((one) => ({
      ...{ id: newId(), revisionId, modelId: one.modelId },
      content: { ...one.serviceLimits, seals: one.serviceLimits.seals.map(inCapitals) },
    })),
  });
}

function inCapitals<T extends { partNumber: string }>(row: T): T {
  return { ...row, partNumber: row.partNumber.toUpperCase() };
}

async function writeLimits({ tx, newId }: Writing, revisionId: string, models: readonly ModelContent[]): Promise<void> {
  await tx.tboRule.createMany({
    data: models.flatMap(({ modelId, tboRules }) =>
      tboRules.map(({ applicationId, hoursTenths, months, serialFrom, serialTo, ...rule }) => ({
        ...rule,
        id: newId(),
        revisionId,
        modelId,
        applicationId: applicationId ?? null,
        hoursTenths: hoursTenths ?? null,
        months: months ?? null,
        serialFrom: serialFrom ? normaliseSerial(serialFrom) : null,
        serialTo: serialTo ? normaliseSerial(serialTo) : null,
        useCategory: rule.useCategory ?? null,
        ageFromMonths: rule.ageFromMonths ?? null,
        ageToMonths: rule.ageToMonths ?? null,
      })),
    ),
  });
  await tx.lifeLimit.createMany({
    data: models.flatMap(({ modelId, lifeLimits }) =>
      lifeLimits.map(({ partNumber, hoursTenths, cycles, overhauls }) => ({
        id: newId(),
        revisionId,
        modelId,
        partNumber: partNumber.toUpperCase(),
        hoursTenths: hoursTenths ?? null,
        cycles: cycles ?? null,
        overhauls: overhauls ?? null,
      })),
    ),
  });
}

async function writeRoutes({ tx, newId }: Writing, revisionId: string, models: readonly ModelContent[]): Promise<void> {
  const routes = models.flatMap(({ modelId, routes }) => routes.map((route) => ({ ...route, id: newId(), modelId })));
  const steps = routes.flatMap((route) =>
    route.steps.map((step, index) => ({ ...step, id: newId(), routeId: route.id, sequence: index + 1 })),
  );
  const measures = steps.flatMap((step) =>
    step.measures.map(({ low, high, dimension, station, zone, chart, ...measure }, index) => ({
      ...measure,
      id: newId(),
      stepId: step.id,
      sequence: index + 1,
      low: low ?? null,
      high: high ?? null,
      dimension: dimension ?? null,
      station: station ?? null,
      ...(zone ? { zone } : {}),
      ...(chart ? { chart } : {}),
    })),
  );
  await tx.routeTemplate.createMany({
    data: routes.map(({ steps: _, material, ...route }) => ({ ...route, revisionId, material: material ?? null })),
  });
  await tx.routeStep.createMany({
    data: steps.map(
      ({ measures: _, instrumentKind, equipmentKind, caution, fact, branch, peening, sheet, ...step }) => ({
        ...step,
        ...(peening ? { peening } : {}),
        ...(sheet ? { sheet } : {}),
        branch: branch ?? null,
        instrumentKind: instrumentKind ?? null,
        equipmentKind: equipmentKind ?? null,
        caution: caution ?? null,
        fact: fact ?? null,
      }),
    ),
  });
  await tx.measureSpec.createMany({ data: measures });
}
