import type { governorOperations } from '@hubwright/contracts/governor-tests/operations';
import type { GovernorProgram } from '@hubwright/contracts/governor-tests/program';
import type { Input, Reply } from '@hubwright/contracts/operation';
import { Inject, Injectable } from '@nestjs/common';
import { fromDbDate } from '../../platform/database/dates.ts';
import { Reads } from '../../platform/database/reads.ts';
import { type Names, namesFor } from './names.ts';

const include = {
  model: true,
  application: true,
  revision: { include: { manual: true } },
} as const;

@Injectable()
export class ProgramQueries {
  constructor(@Inject(Reads) private readonly reads: Reads) {}

  async list({
    show,
    limit,
    after,
  }: Input<typeof governorOperations.listGovernorPrograms>): Promise<
    Reply<typeof governorOperations.listGovernorPrograms>
  > {
    const current = await this.currentIds();
    const rows = await this.reads.models.governorProgram.findMany({
      where: show === 'current' ? { id: { in: [...current] } } : {},
      orderBy: { id: 'desc' },
      ...(after ? { cursor: { id: after }, skip: 1 } : {}),
      take: limit + 1,
      include,
    });
    const names = await namesFor(
      this.reads,
      rows.map(({ issuedBy }) => issuedBy),
    );
    const shown = rows.slice(0, limit).map((row) => programReply(row, { current, names }));
    return { rows: shown, next: rows.length > limit ? (shown.at(-1)?.id ?? null) : null };
  }

  /** The newest issue of each application by the current revision of its manual. */
  async currentIds(): Promise<Set<string>> {
    const rows = await this.reads.sql<{ id: string }>(
      `SELECT DISTINCT ON (p.revision_id, p.application_id) p.id::text FROM governor_programs p
       JOIN manual_revisions r ON r.id = p.revision_id AND r.state = 'current'
       ORDER BY p.revision_id, p.application_id, p.issue DESC LIMIT 2000`,
    );
    return new Set(rows.map(({ id }) => id));
  }
}

type Stored = NonNullable<Awaited<ReturnType<typeof oneProgram>>>;
function oneProgram(models: Reads['models']) {
  return models.governorProgram.findFirst({ include });
}

/** A program as the contract shows it. */
export function programReply(row: Stored, said: { current: ReadonlySet<string>; names: Names }): GovernorProgram {
  const { model, application, revision } = row;
  return {
    ...{ id: row.id, issue: row.issue, isCurrent: said.current.has(row.id), basis: row.basis },
    model: { id: model.id, designation: model.designation, maker: model.maker },
    application,
    revision: {
      ...{ id: revision.id, manual: revision.manual.number, revision: revision.revision, state: revision.state },
      issuedOn: fromDbDate(revision.issuedOn),
    },
    content: row.content as unknown as GovernorProgram['content'],
    issuedBy: said.names(row.issuedBy),
    issuedAt: row.issuedAt.toISOString(),
  };
}
