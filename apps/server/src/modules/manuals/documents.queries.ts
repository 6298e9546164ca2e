import type { documentOperations } from '@hubwright/contracts/manuals/document-operations';
import type { DocumentKind } from '@hubwright/contracts/manuals/words';
import type { Input, Reply } from '@hubwright/contracts/operation';
import { Inject, Injectable } from '@nestjs/common';
import { fromDbDate, fromDbDateOrNull } from '../../platform/database/dates.ts';
import type { DocumentIssue, Prisma } from '../../platform/database/generated/client.ts';
import { Reads } from '../../platform/database/reads.ts';

type Asked = Input<typeof documentOperations.listDocuments>;
type IssueRow = Reply<typeof documentOperations.listDocuments>['rows'][number]['issues'][number];

@Injectable()
export class DocumentQueries {
  constructor(@Inject(Reads) private readonly reads: Reads) {}

  async list(input: Asked): Promise<Reply<typeof documentOperations.listDocuments>> {
    const rows = await this.reads.models.document.findMany({
      where: asked(input),
      orderBy: [{ number: 'asc' }, { kind: 'asc' }],
      take: input.limit + 1,
      include: {
        issues: { orderBy: [{ issuedOn: 'desc' }, { id: 'desc' }], take: 50 },
        models: { include: { model: { select: { id: true, designation: true } } }, take: 100 },
      },
    });
    const shown = rows.slice(0, input.limit);
    const last = shown.at(-1);
    const names = await this.names(shown.flatMap(({ issues }) => issues));
    return {
      rows: shown.map(({ kind, withdrawnOn, models, issues, ...row }) => ({
        ...row,
        kind: kind as DocumentKind,
        withdrawnOn: fromDbDateOrNull(withdrawnOn),
        models: models.map(({ model }) => model),
        issues: issues.map((issue) => issueRow(issue, names)),
      })),
      next: rows.length > input.limit && last ? `${last.kind} ${last.number}` : null,
    };
  }

  private async names(issues: readonly DocumentIssue[]): Promise<Map<string, string>> {
    const ids = [...new Set(issues.flatMap(({ currencyCheckedBy }) => currencyCheckedBy ?? []))];
    const people = await this.reads.models.person.findMany({
      where: { id: { in: ids } },
      select: { id: true, displayName: true },
    });
    return new Map(people.map(({ id, displayName }) => [id, displayName]));
  }
}

/** Numbers are given by many issuers: the kind tells two of one number apart, also where the next page begins. */
function asked({ search, kind, modelId, withdrawn, after }: Asked): Prisma.DocumentWhereInput {
  const [, lastKind = '', lastNumber = ''] = /^(\S+) (.+)$/.exec(after ?? '') ?? [];
  const contains = search ? { contains: search, mode: 'insensitive' as const } : undefined;
  return {
    ...(contains ? { OR: [{ number: contains }, { title: contains }, { issuer: contains }] } : {}),
    ...(kind ? { kind } : {}),
    ...(modelId ? { models: { some: { modelId } } } : {}),
    ...(lastNumber
      ? { AND: [{ OR: [{ number: { gt: lastNumber } }, { number: lastNumber, kind: { gt: lastKind } }] }] }
      : {}),
    withdrawnOn: withdrawn === 'yes' ? { not: null } : null,
  };
}

function issueRow(issue: DocumentIssue, names: ReadonlyMap<string, string>): IssueRow {
  const { currencyCheckedBy: by } = issue;
  return {
    ...{ id: issue.id, issue: issue.issue, summary: issue.summary, version: issue.version },
    issuedOn: fromDbDate(issue.issuedOn),
    state: issue.state as IssueRow['state'],
    currencyCheckedBy: by === null ? null : (names.get(by) ?? ''),
    currencyCheckedOn: fromDbDateOrNull(issue.currencyCheckedOn),
  };
}
