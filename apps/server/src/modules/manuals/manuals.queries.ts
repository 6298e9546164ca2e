import { noBladeRules } from '@hubwright/contracts/manuals/measures';
import type { manualOperations } from '@hubwright/contracts/manuals/operations';
import type { Input, Reply } from '@hubwright/contracts/operation';
import { Inject, Injectable } from '@nestjs/common';
import { found } from '../../platform/command/version.ts';
import { fromDbDate, fromDbDateOrNull } from '../../platform/database/dates.ts';
import type { ManualRevision } from '../../platform/database/generated/client.ts';
import { Reads } from '../../platform/database/reads.ts';

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
    const revision = found(
      await this.reads.models.manualRevision.findUnique({ where: { id: revisionId }, include: wholeContent }),
      'This manual revision',
    );
    const content = [...revision.kitList, ...revision.routes, ...revision.tboRules, ...revision.lifeLimits];
    const models = await this.reads.models.unitModel.findMany({
      where: { id: { in: [...new Set(content.map(({ modelId }) => modelId))] } },
      orderBy: { designation: 'asc' },
    });
    const { manual } = revision;
    const of = <T extends { modelId: string }>(rows: T[], modelId: string) => rows.filter((r) => r.modelId === modelId);
    return {
      ...revisionRow(revision, await this.names([revision])),
      manual: { id: manual.id, number: manual.number, title: manual.title },
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
      })) as unknown as RevisionDetail['models'],
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

const inOrder = { orderBy: { sequence: 'asc' } } as const;
const wholeContent = {
  manual: true,
  kitList: { ...inOrder, include: { part: { select: { number: true, description: true } } } },
  routes: { orderBy: { partClass: 'asc' }, include: { steps: { ...inOrder, include: { measures: inOrder } } } },
  tboRules: true,
  lifeLimits: { orderBy: { partNumber: 'asc' } },
  bladeRules: true,
} as const;

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

/** Contracts leave out what is not there; the database says null. */
function present<T extends object>(row: T): T {
  return Object.fromEntries(Object.entries(row).filter(([, value]) => value !== null)) as T;
}
