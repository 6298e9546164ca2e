import { noBladeRules } from '@hubwright/contracts/manuals/measures';
import { noServiceLimits } from '@hubwright/contracts/manuals/service-limits';
import type { Reads } from '../../platform/database/reads.ts';

const inOrder = { orderBy: { sequence: 'asc' } } as const;
const wholeContent = {
  manual: true,
  kitList: { ...inOrder, include: { part: { select: { number: true, description: true } } } },
  routes: { orderBy: { partClass: 'asc' }, include: { steps: { ...inOrder, include: { measures: inOrder } } } },
  tboRules: true,
  lifeLimits: { orderBy: { partNumber: 'asc' } },
  bladeRules: true,
  serviceLimits: true,
} as const;

/** A revision and all it says, model by model, as the contract shows it; undefined when there is none. */
export async function revisionContent(read: Pick<Reads['models'], 'manualRevision' | 'unitModel'>, revisionId: string) {
  const revision = await read.manualRevision.findUnique({ where: { id: revisionId }, include: wholeContent });
  if (!revision) return undefined;
  const content = [...revision.kitList, ...revision.routes, ...revision.tboRules, ...revision.lifeLimits];
  const models = await read.unitModel.findMany({
    where: { id: { in: [...new Set(content.map(({ modelId }) => modelId))] } },
    orderBy: { designation: 'asc' },
  });
  const of = <T extends { modelId: string }>(rows: T[], modelId: string) => rows.filter((r) => r.modelId === modelId);
  return {
    revision,
    models: models.map(({ id, designation }) => ({
      modelId: id,
      designation,
      kitList: of(revision.kitList, id).map(({ part, ...line }) =>
        present({ ...line, part: part.number, description: part.description }),
      ),
      routes: of(revision.routes, id).map((route) =>
        present({
          ...route,
          steps: route.steps.map((step) => present({ ...step, measures: step.measures.map(present) })),
        }),
      ),
      tboRules: of(revision.tboRules, id).map(present),
      lifeLimits: of(revision.lifeLimits, id).map(present),
      bladeRules: of(revision.bladeRules, id)[0]?.content ?? noBladeRules,
      serviceLimits: of(revision.serviceLimits, id)[0]?.content ?? noServiceLimits,
    })),
  };
}

/** Contracts leave out what is not there; the database says null. */
function present<T extends object>(row: T): T {
  return Object.fromEntries(Object.entries(row).filter(([, value]) => value !== null)) as T;
}
