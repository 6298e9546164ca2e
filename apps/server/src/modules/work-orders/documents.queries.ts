import type { DocumentKind } from '@hubwright/contracts/manuals/words';
import type { Reply } from '@hubwright/contracts/operation';
import type { documentSetOperations } from '@hubwright/contracts/work-orders/document-set-operations';
import { Inject, Injectable } from '@nestjs/common';
import { found } from '../../platform/command/version.ts';
import { fromDbDate, fromDbDateOrNull } from '../../platform/database/dates.ts';
import { Reads } from '../../platform/database/reads.ts';
import { documentsForReading } from './document-set.ts';

type Documents = Reply<typeof documentSetOperations.workOrderDocuments>;

@Injectable()
export class DocumentSetQueries {
  constructor(@Inject(Reads) private readonly reads: Reads) {}

  async of(workOrderId: string): Promise<Documents> {
    const workOrder = found(
      await this.reads.models.workOrder.findUnique({
        where: { id: workOrderId },
        include: { revision: { include: { manual: true } } },
      }),
      'This work order',
    );
    const { set, differences } = await documentsForReading(this.reads.models, workOrder);
    const { revision } = workOrder;
    const names = await this.names([revision, ...set]);
    const checked = (of: { currencyCheckedBy: string | null; currencyCheckedOn: Date | null }) => ({
      currencyCheckedBy: of.currencyCheckedBy === null ? null : (names.get(of.currencyCheckedBy) ?? ''),
      currencyCheckedOn: fromDbDateOrNull(of.currencyCheckedOn),
    });
    const { number, title } = revision.manual;
    return {
      manual: { number, title, revision: revision.revision, ...checked(revision) },
      set: set.map(({ document, ...issue }) => ({
        issueId: issue.id,
        ...{ kind: document.kind as DocumentKind, number: document.number, title: document.title, issue: issue.issue },
        issuedOn: fromDbDate(issue.issuedOn),
        ...checked(issue),
      })),
      differences,
    };
  }

  private async names(of: readonly { currencyCheckedBy: string | null }[]): Promise<Map<string, string>> {
    const ids = [...new Set(of.flatMap(({ currencyCheckedBy }) => currencyCheckedBy ?? []))];
    const people = await this.reads.models.person.findMany({
      where: { id: { in: ids } },
      select: { id: true, displayName: true },
    });
    return new Map(people.map(({ id, displayName }) => [id, displayName]));
  }
}
