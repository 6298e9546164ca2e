import type { ModelContent } from '@hubwright/contracts/manuals/revision';
import { type Pointed, Problem } from '@hubwright/contracts/problems';
import { serialInRange } from '@hubwright/rules/kit-list';
import { routeFaults } from '@hubwright/rules/routes';
import type { Tx } from '../../platform/database/client.ts';
import { wrongBladeRules, wrongMeasures } from './check-measures.ts';
import { wrongSheets } from './check-sheets.ts';

interface Model {
  readonly id: string;
  readonly designation: string;
  readonly bladeCount: number | null;
}

/**
 * Looks through a revision before anything is written. Throws with a pointer for each wrong line: `unknown-part`, or
 * `line-wrong` for a model of another manual, a line per blade on a unit without blades, a serial range that makes no sense
 * two routes for one class and scope, a route nobody could work by, limits that contradict each other, or two life limits of one part. Answers part ids by number.
 */
export async function refuseWrongContent(
  tx: Tx,
  manual: { id: string; number: string },
  models: readonly ModelContent[],
): Promise<ReadonlyMap<string, string>> {
  const known = await tx.unitModel.findMany({ where: { manualId: manual.id }, include: { applications: true } });
  const wrong = models.flatMap((content, index) => {
    const pointer = `/models/${index}`;
    const model = known.find(({ id }) => id === content.modelId);
    if (!model) return [{ pointer: `${pointer}/modelId`, detail: `${manual.number} is not the manual of this model` }];
    const applications = new Set(model.applications.map(({ id }) => id));
    return [
      ...wrongLines(content, model, pointer),
      ...doubleRoutes(content, pointer),
      ...wrongRoutes(content, pointer),
      ...doubleLimits(content, pointer),
      ...wrongMeasures(content, pointer),
      ...wrongBladeRules(content, pointer),
      ...wrongSheets(content, { bladeCount: model.bladeCount, applications }, pointer),
      ...wrongTboRanges(content, pointer),
      ...wrongServiceLimits(content, pointer),
      ...content.tboRules.flatMap(({ applicationId }, rule) =>
        applicationId && !applications.has(applicationId)
          ? [{ pointer: `${pointer}/tboRules/${rule}/applicationId`, detail: 'This application is of another model' }]
          : [],
      ),
    ];
  });
  const twice = models.findIndex(({ modelId }, index) => models.findIndex((one) => one.modelId === modelId) !== index);
  if (twice >= 0) wrong.push({ pointer: `/models/${twice}/modelId`, detail: 'This model is given twice' });
  if (wrong.length > 0) throw new Problem('line-wrong', summary(wrong), {}, wrong);
  return partIdsOf(tx, models);
}

function wrongLines(content: ModelContent, model: Model, at: string): Pointed[] {
  return content.kitList.flatMap((line, index) => {
    const pointer = `${at}/kitList/${index}`;
    const wrong: Pointed[] = [];
    if (line.per === 'blade' && model.bladeCount === null)
      wrong.push({ pointer: `${pointer}/per`, detail: `${model.designation} has no blades` });
    return [...wrong, ...wrongRange(line, pointer)];
  });
}

function wrongTboRanges({ tboRules }: ModelContent, at: string): Pointed[] {
  return tboRules.flatMap((rule, index) => wrongRange(rule, `${at}/tboRules/${index}`));
}

type Range = { readonly serialFrom?: string | undefined; readonly serialTo?: string | undefined };

function wrongRange({ serialFrom, serialTo }: Range, pointer: string): Pointed[] {
  try {
    serialInRange('0', { ...(serialFrom ? { from: serialFrom } : {}), ...(serialTo ? { to: serialTo } : {}) });
    return [];
  } catch (error) {
    return [{ pointer: `${pointer}/serialFrom`, detail: (error as Error).message }];
  }
}

/** Two routes for one class and scope would raise two travelers for one part. */
function doubleRoutes(content: ModelContent, at: string): Pointed[] {
  const taken = new Map<string, string>();
  return content.routes.flatMap((route, index) =>
    route.scopes.flatMap((scope) => {
      const key = `${route.partClass} ${scope}`;
      const other = taken.get(key);
      taken.set(key, route.title);
      return other === undefined
        ? []
        : [{ pointer: `${at}/routes/${index}/scopes`, detail: `“${other}” is already the route of ${key}` }];
    }),
  );
}

/** Routes nobody could work by. */
function wrongRoutes({ routes }: ModelContent, at: string): Pointed[] {
  return routes.flatMap(({ steps }, route) =>
    routeFaults(steps.map(({ title, phase, branch }) => ({ title, phase, branch: branch ?? null }))).map(
      ({ step, field, detail }) => ({ pointer: `${at}/routes/${route}/steps/${step}/${field}`, detail }),
    ),
  );
}

/** One way of preservation has one storage rule, one part number one installed life. */
function wrongServiceLimits({ serviceLimits }: ModelContent, at: string): Pointed[] {
  const twice = (list: 'storage' | 'seals', keys: readonly string[]) =>
    keys.flatMap((key, index) =>
      keys.indexOf(key) === index
        ? []
        : [{ pointer: `${at}/serviceLimits/${list}/${index}`, detail: `${key} is given above already` }],
    );
  return [
    ...twice(
      'storage',
      serviceLimits.storage.map(({ preservation }) => preservation),
    ),
    ...twice(
      'seals',
      serviceLimits.seals.map(({ partNumber }) => partNumber.toUpperCase()),
    ),
  ];
}

/** One part number has one life limit. */
function doubleLimits({ lifeLimits }: ModelContent, at: string): Pointed[] {
  const numbers = lifeLimits.map(({ partNumber }) => partNumber.toUpperCase());
  return numbers.flatMap((number, index) =>
    numbers.indexOf(number) === index
      ? []
      : [{ pointer: `${at}/lifeLimits/${index}/partNumber`, detail: `${number} has a life limit above already` }],
  );
}

async function partIdsOf(tx: Tx, models: readonly ModelContent[]): Promise<ReadonlyMap<string, string>> {
  const numbers = [...new Set(models.flatMap(({ kitList }) => kitList.map(({ part }) => part.toUpperCase())))];
  const parts = await tx.part.findMany({ where: { number: { in: numbers } }, select: { id: true, number: true } });
  const ids = new Map(parts.map(({ id, number }) => [number, id]));
  const missing = models.flatMap(({ kitList }, model) =>
    kitList.flatMap(({ part }, line) =>
      ids.has(part.toUpperCase())
        ? []
        : [{ pointer: `/models/${model}/kitList/${line}/part`, detail: `There is no part ${part}` }],
    ),
  );
  if (missing.length > 0) throw new Problem('unknown-part', summary(missing), {}, missing);
  return ids;
}

function summary(wrong: readonly Pointed[]): string {
  const shown = wrong.slice(0, 3).map(({ detail }) => detail);
  return wrong.length > 3 ? `${shown.join('; ')} and ${wrong.length - 3} more` : shown.join('; ');
}
