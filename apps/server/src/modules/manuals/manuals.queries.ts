import type { manualOperations } from '@hubwright/contracts/manuals/operations';
import type { Input, Reply } from '@hubwright/contracts/operation';
import { Inject, Injectable } from '@nestjs/common';
import { found } from '../../platform/command/version.ts';
import { fromDbDate, fromDbDateOrNull } from '../../platform/database/dates.ts';
import type { ManualRevision } from '../../platform/database/generated/client.ts';
import { Reads } from '../../platform/database/reads.ts';
import { revisionContent } from './revision-content.ts';

type RevisionDetail = Reply<typeof manualOperations.showRevision>;

@Injectable()
export class ManualQueries {
  constructor(@Inject(Reads) private readonly reads: Reads) {}

  async list(input: Input<typeof manualOperations.listManuals>): Promise<Reply<typeof manualOperations.listManuals>> {
    const { search, after, limit } = input;
    const contains = search ? { contains: search, mode: 'insensitive' as const } : undefined;
    const rows = await this.reads.models.manual.findMany({
      where: {
        ...(contains ? { OR: [{ number: contains }, { title: contains }] } : {}),
        ...(after ? { AND: { number: { gt: after } } } : {}),
      },
      orderBy: { number: 'asc' },
      take: limit + 1,
      include: { revisions: { orderBy: { issuedOn: 'desc' }, take: 50 } },
    });
    const shown = rows.slice(0, limit);
    const names = await this.names(shown.flatMap(({ revisions }) => revisions));
    return {
      rows: shown.map((row) => ({ ...row, revisions: row.revisions.map((revision) => revisionRow(revision, names)) })),
      next: rows.length > limit ? (shown.at(-1)?.number ?? null) : null,
    };
  }

  async showRevision(revisionId: string): Promise<RevisionDetail> {
    const { revision, models } = found(await revisionContent(this.reads.models, revisionId), 'This manual revision');
    const { manual } = revision;
    return {
      ...revisionRow(revision, await this.names([revision])),
      manual: { id: manual.id, number: manual.number, title: manual.title },
      models: models as unknown as RevisionDetail['models'],
    };
  }

  private async names(revisions: readonly ManualRevision[]): Promise<Map<string, string>> {
    const ids = [...new Set(revisions.flatMap(({ currencyCheckedBy }) => currencyCheckedBy ?? []))];
    const people = await this.reads.models.person.findMany({
      where: { id: { in: ids } },
      select: { id: true, displayName: true },
    });
    return new Map(people.map(({ id, displayName }) => [id, displayName]));
  }
}

function revisionRow(revision: ManualRevision, names: Map<string, string>) {
  return {
    id: revision.id,
    revision: revision.revision,
    issuedOn: fromDbDate(revision.issuedOn),
    state: revision.state as 'current' | 'superseded',
    currencyCheckedBy: revision.currencyCheckedBy === null ? null : (names.get(revision.currencyCheckedBy) ?? ''),
    currencyCheckedOn: fromDbDateOrNull(revision.currencyCheckedOn),
    version: revision.version,
  };
}
