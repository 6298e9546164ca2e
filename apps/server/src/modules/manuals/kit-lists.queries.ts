import type { kitListOperations } from '@hubwright/contracts/manuals/kit-list-operations';
import type { Input, Reply } from '@hubwright/contracts/operation';
import { Inject, Injectable } from '@nestjs/common';
import { Reads } from '../../platform/database/reads.ts';
import { currentKitLists } from './kit-list-drafts.ts';

type Listed = Reply<typeof kitListOperations.listKitListDrafts>;

/** Kit lists that wait for an inspector. */
@Injectable()
export class KitListQueries {
  constructor(@Inject(Reads) private readonly reads: Reads) {}

  async list({ limit, after }: Input<typeof kitListOperations.listKitListDrafts>): Promise<Listed> {
    const { kitListDraft, person, manualRevision } = this.reads.models;
    const rows = await kitListDraft.findMany({
      where: { state: 'waiting', ...(after ? { id: { gt: after } } : {}) },
      orderBy: { id: 'asc' },
      take: limit + 1,
      include: {
        manual: { select: { id: true, number: true } },
        model: { select: { id: true, designation: true } },
      },
    });
    const shown = rows.slice(0, limit);
    const [lists, people, revisions] = await Promise.all([
      currentKitLists(
        this.reads.models,
        shown.map(({ modelId }) => modelId),
      ),
      person.findMany({
        where: { id: { in: shown.map(({ preparedBy }) => preparedBy) } },
        select: { id: true, displayName: true, initials: true },
      }),
      manualRevision.findMany({
        where: { manualId: { in: shown.map(({ manualId }) => manualId) }, state: 'current' },
        select: { manualId: true, revision: true },
      }),
    ]);
    const nobody = (id: string) => ({ id, displayName: 'Unknown person', initials: '?' });
    return {
      rows: shown.map(({ id, manual, model, lines, preparedBy, preparedAt, version }) => {
        const revision = revisions.find(({ manualId }) => manualId === manual.id)?.revision;
        return {
          ...{ id, manual, model, version, preparedAt: preparedAt.toISOString() },
          preparedBy: people.find((one) => one.id === preparedBy) ?? nobody(preparedBy),
          lines: lines as Listed['rows'][number]['lines'],
          current: revision === undefined ? null : { revision, lines: lists.get(model.id) ?? [] },
        };
      }),
      next: rows.length > limit ? (shown.at(-1)?.id ?? null) : null,
    };
  }
}
