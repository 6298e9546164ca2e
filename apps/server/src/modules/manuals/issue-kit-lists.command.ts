import { kitListOperations } from '@hubwright/contracts/manuals/kit-list-operations';
import { manualOperations } from '@hubwright/contracts/manuals/operations';
import { kitListLine, type ModelContent, modelContent } from '@hubwright/contracts/manuals/revision';
import { Problem } from '@hubwright/contracts/problems';
import { defineCommand } from '../../platform/command/command.ts';
import { found, sameVersion } from '../../platform/command/version.ts';
import type { Tx } from '../../platform/database/client.ts';
import { issueContent } from './issue-content.ts';
import { revisionContent } from './revision-content.ts';

/** Kit lists that a table brought become the next revision, beside all else that the current one says. */
export const issueKitLists = defineCommand(kitListOperations.issueKitLists, {
  locks: (input) => ['imports', `manual:${input.manualId}`],
  async execute(context) {
    const { tx, input } = context;
    const manual = found(await tx.manual.findUnique({ where: { id: input.manualId } }), 'This manual');
    const drafts = await waitingDrafts(tx, input);
    const models = withLists(await contentNow(tx, manual.id), drafts);
    const { revision, issuedOn } = input;
    const issued = await issueContent(context, { manual, revision, issuedOn, models });
    await tx.kitListDraft.updateMany({
      where: { id: { in: drafts.map(({ id }) => id) } },
      data: { state: 'issued', revisionId: issued.id, version: { increment: 1 } },
    });
    return {
      reply: { id: issued.id, version: 1, superseded: issued.superseded },
      subjects: [
        ...issued.subjects,
        ...drafts.map(({ id, version }) => ({ kind: 'kit-list-draft', id, before: version, after: version + 1 })),
      ],
      facts: { manual: manual.number, supersedes: issued.supersedes, drafts: drafts.map(({ id }) => id) },
    };
  },
});

type Draft = Awaited<ReturnType<Tx['kitListDraft']['findMany']>>[number];

/** As the person saw them. Throws `draft-gone`, `out-of-date`. */
async function waitingDrafts(
  tx: Tx,
  { manualId, drafts }: { manualId: string; drafts: readonly { id: string; version: number }[] },
): Promise<Draft[]> {
  const rows = await tx.kitListDraft.findMany({
    where: { manualId, state: 'waiting', id: { in: drafts.map(({ id }) => id) } },
  });
  for (const [index, { id, version }] of drafts.entries()) {
    const draft = rows.find((row) => row.id === id);
    const pointer = `/drafts/${index}/id`;
    if (!draft)
      throw new Problem('draft-gone', 'One of these kit lists is no longer waiting', {}, [
        { pointer, detail: 'No longer waiting' },
      ]);
    sameVersion(draft.version, version);
  }
  return rows;
}

async function contentNow(tx: Tx, manualId: string): Promise<ModelContent[]> {
  const current = await tx.manualRevision.findFirst({ where: { manualId, state: 'current' }, select: { id: true } });
  if (!current) return [];
  const content = await revisionContent(tx, current.id);
  const shown = manualOperations.showRevision.output.shape.models.parse(content?.models ?? []);
  return shown.map(({ designation: _, kitList, routes, ...rest }) =>
    modelContent.parse({
      ...rest,
      kitList: kitList.map(({ id: __, sequence: ___, description: ____, ...line }) => line),
      routes: routes.map(({ id: __, ...route }) => route),
    }),
  );
}

/** Throws `line-wrong` where a list no longer goes with the rest, as a sheet that asks for weights it no longer names. */
function withLists(models: readonly ModelContent[], drafts: readonly Draft[]): ModelContent[] {
  const lists = new Map(drafts.map(({ modelId, lines }) => [modelId, kitListLine.array().parse(lines)]));
  const empty = { routes: [], tboRules: [] };
  const added = drafts.filter(({ modelId }) => !models.some((model) => model.modelId === modelId));
  const whole = [...models, ...added.map(({ modelId }) => ({ modelId, kitList: [], ...empty }))];
  return whole.map((model) => {
    const parsed = modelContent.safeParse({ ...model, kitList: lists.get(model.modelId) ?? model.kitList });
    if (parsed.success) return parsed.data;
    const faults = parsed.error.issues.map(({ message }) => ({ pointer: '/drafts', detail: message }));
    throw new Problem('line-wrong', faults.map(({ detail }) => detail).join('; '), {}, faults);
  });
}
