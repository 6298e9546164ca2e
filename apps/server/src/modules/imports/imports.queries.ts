import { type ImportKind, importFields, importKinds } from '@hubwright/contracts/imports/kinds';
import type { importOperations } from '@hubwright/contracts/imports/operations';
import type { Input, Reply } from '@hubwright/contracts/operation';
import { Inject, Injectable } from '@nestjs/common';
import { CLOCK, type Clock } from '../../platform/command/clock.ts';
import { ShopZone } from '../../platform/command/shop-zone.ts';
import { Reads } from '../../platform/database/reads.ts';
import { planImport } from './plan.ts';
import { previewTable } from './preview-table.ts';
import { stagedTable } from './table.ts';
import { templateText } from './template-text.ts';

interface DoneRow {
  readonly id: string;
  readonly kind: ImportKind;
  readonly applied_at: Date;
  readonly person_id: string;
  readonly display_name: string | null;
  readonly initials: string | null;
  readonly newRows: number;
  readonly changedRows: number;
  readonly sameRows: number;
  readonly waitingLots: number;
}

const doneSql = `
  SELECT i.id, i.kind, i.applied_at, i.applied_by AS person_id, p.display_name, p.initials, i.new_rows AS "newRows",
    i.changed_rows AS "changedRows", i.same_rows AS "sameRows",
    (SELECT count(*)::int FROM opening_lots o JOIN lots l ON l.id = o.lot_id
      WHERE o.import_id = i.id AND l.state = 'quarantine') AS "waitingLots"
  FROM (SELECT * FROM imported_tables WHERE customer_id IS NULL AND ($1::uuid IS NULL OR id < $1) ORDER BY id DESC LIMIT $2) i
  LEFT JOIN people p ON p.id = i.applied_by ORDER BY i.id DESC`;

/** What tables would do, and what they did. */
@Injectable()
export class ImportQueries {
  constructor(
    @Inject(Reads) private readonly reads: Reads,
    @Inject(CLOCK) private readonly clock: Clock,
    @Inject(ShopZone) private readonly zone: ShopZone,
  ) {}

  /** The headings of a kind, what may stand below each, and one row of the invented shop. */
  template(kind: ImportKind): string {
    return templateText(importFields[kind]);
  }

  async preview(
    input: Input<typeof importOperations.previewImport>,
  ): Promise<Reply<typeof importOperations.previewImport>> {
    const table = await stagedTable(this.reads.models, input.importId, importKinds);
    const { kind, rows } = table;
    const today = await this.zone.today(this.clock.now());
    const shown = await previewTable(this.reads.models, input, {
      ...{ table, fields: importFields[kind] },
      plan: (mapping) =>
        planImport(kind, this.reads.models, {
          ...{ ask: (text, given) => this.reads.sql(text, given), rows, mapping, today },
        }),
    });
    return { ...shown, kind };
  }

  async list({
    after,
    limit,
  }: Input<typeof importOperations.listImports>): Promise<Reply<typeof importOperations.listImports>> {
    const rows = await this.reads.sql<DoneRow>(doneSql, [
      after && /^[0-9a-f-]{36}$/i.test(after) ? after : null,
      limit + 1,
    ]);
    const shown = rows.slice(0, limit);
    return {
      rows: shown.map(({ person_id, display_name, initials, applied_at, ...row }) => ({
        ...row,
        appliedAt: applied_at.toISOString(),
        appliedBy: { id: person_id, displayName: display_name ?? 'Unknown person', initials: initials ?? '?' },
      })),
      next: rows.length > limit ? (shown.at(-1)?.id ?? null) : null,
    };
  }
}
