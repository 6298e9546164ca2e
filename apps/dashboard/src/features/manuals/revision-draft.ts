import type { manualOperations } from '@hubwright/contracts/manuals/operations';
import type { Sent } from '@hubwright/contracts/operation';
import type { Revision } from './manuals.ts';

export type Content = Sent<typeof manualOperations.issueRevision>['models'];

/** What a revision says, as it is entered: without what the server added to show it. */
export function contentOf(revision: Revision): Content {
  return revision.models.map(({ modelId, kitList, routes, tboRules, lifeLimits, bladeRules, serviceLimits }) => ({
    modelId,
    kitList: kitList.map(({ id: _, sequence: __, description: ___, ...line }) => line),
    routes: routes.map(({ id: _, ...route }) => route),
    tboRules: [...tboRules],
    lifeLimits: [...lifeLimits],
    bladeRules,
    serviceLimits,
  }));
}

/** For the first revision of a manual: its models, with nothing said about them yet. */
export function emptyContent(modelIds: readonly string[]): Content {
  return modelIds.map((modelId) => ({ modelId, kitList: [], routes: [], tboRules: [] }));
}

/** The file content is kept and changed in. */
export function contentFile(number: string, models: Content): { name: string; text: string } {
  const name = number.toLowerCase().replace(/[^a-z0-9]+/g, '-');
  return { name: `${name}.json`, text: `${JSON.stringify({ models }, null, 2)}\n` };
}

/** The content in a file that someone chose; undefined when it is no such file. What is wrong inside it the server says. */
export function contentIn(text: string): Content | undefined {
  try {
    const read = JSON.parse(text) as { models?: unknown };
    return Array.isArray(read?.models) ? (read.models as Content) : undefined;
  } catch {
    return undefined;
  }
}

const words: Record<string, string> = {
  models: 'model',
  kitList: 'kit list line',
  routes: 'route',
  steps: 'step',
  measures: 'value',
  tboRules: 'time between overhauls',
  lifeLimits: 'life limit',
  serviceLimits: 'storage and seals',
  storage: 'storage rule',
  seals: 'seal',
};

/** Where in the file something is wrong, as a person counts: `/models/0/kitList/3/part` → `model 1, kit list line 4, part`. */
export function placeInWords(pointer: string): string {
  const said: string[] = [];
  for (const step of pointer.split('/').slice(1)) {
    if (/^\d+$/.test(step)) said.push(`${said.pop() ?? 'line'} ${Number(step) + 1}`);
    else said.push(words[step] ?? step);
  }
  return said.join(', ');
}
