import type { Input, Reply } from '@hubwright/contracts/operation';
import type { RecordWord, ReleaseContent, releaseOperations } from '@hubwright/contracts/releases/operations';
import { Inject, Injectable, StreamableFile } from '@nestjs/common';
import type { Actor } from '../../platform/command/actor.ts';
import { CLOCK, type Clock } from '../../platform/command/clock.ts';
import { ShopZone } from '../../platform/command/shop-zone.ts';
import { found } from '../../platform/command/version.ts';
import { Reads } from '../../platform/database/reads.ts';
import { FILES, type FileStore } from '../../platform/files/store.ts';
import { checklistFor } from './checklist.ts';

interface ListedRow {
  readonly id: string;
  readonly number: string;
  readonly word: string;
  readonly work_order_id: string;
  readonly work_order_number: string;
  readonly designation: string;
  readonly serial: string;
  readonly customer: string;
  readonly released_at: Date;
  readonly person_id: string;
  readonly display_name: string;
  readonly initials: string;
  readonly file_hash: string;
  readonly content_hash: string;
  readonly version: number;
  readonly supersedes: { id: string; number: string; reason: string } | null;
  readonly superseded_by: { id: string; number: string } | null;
}

const listSql = `
  SELECT r.id::text, r.number, r.word, w.id::text AS work_order_id, w.number AS work_order_number, m.designation,
    coalesce(u.serial, '') AS serial, c.name AS customer, r.released_at, o.person_id::text AS person_id,
    coalesce(p.display_name, 'Unknown person') AS display_name, coalesce(p.initials, '?') AS initials, r.file_hash, r.content_hash, r.version,
    (SELECT jsonb_build_object('id', b.id, 'number', b.number, 'reason', r.reason) FROM releases b WHERE b.id = r.supersedes_id) AS supersedes,
    (SELECT jsonb_build_object('id', n.id, 'number', n.number) FROM releases n WHERE n.supersedes_id = r.id) AS superseded_by
  FROM releases r
  JOIN work_orders w ON w.id = r.work_order_id
  JOIN unit_models m ON m.id = w.model_id
  JOIN serialized_items u ON u.id = w.unit_id
  JOIN customers c ON c.id = w.customer_id
  JOIN sign_offs o ON o.id = r.sign_off_id
  LEFT JOIN people p ON p.id = o.person_id
  WHERE ($1::uuid IS NULL OR r.id = $1) AND ($2::uuid IS NULL OR r.work_order_id = $2) AND ($3::text IS NULL OR r.number < $3)
  ORDER BY r.number DESC LIMIT $4`;

@Injectable()
export class ReleaseQueries {
  constructor(
    @Inject(Reads) private readonly reads: Reads,
    @Inject(CLOCK) private readonly clock: Clock,
    @Inject(ShopZone) private readonly zone: ShopZone,
    @Inject(FILES) private readonly files: FileStore,
  ) {}

  async checklist(
    input: Input<typeof releaseOperations.releaseChecklist>,
    actor: Actor,
  ): Promise<Reply<typeof releaseOperations.releaseChecklist>> {
    const today = await this.zone.today(this.clock.now());
    return checklistFor(this.reads.models, { workOrderId: input.workOrderId, personId: actor.personId, today });
  }

  async list(
    input: Input<typeof releaseOperations.listReleases>,
  ): Promise<Reply<typeof releaseOperations.listReleases>> {
    const rows = await this.reads.sql<ListedRow>(listSql, [
      null,
      input.workOrderId ?? null,
      input.after ?? null,
      input.limit + 1,
    ]);
    const shown = rows.slice(0, input.limit);
    return { rows: shown.map(releaseRow), next: rows.length > input.limit ? (shown.at(-1)?.number ?? null) : null };
  }

  async one({ releaseId }: Input<typeof releaseOperations.release>): Promise<Reply<typeof releaseOperations.release>> {
    const [[row], stored] = await Promise.all([
      this.reads.sql<ListedRow>(listSql, [releaseId, null, null, 1]),
      this.reads.models.release.findUnique({ where: { id: releaseId }, select: { content: true } }),
    ]);
    return {
      ...releaseRow(found(row, 'This release')),
      content: found(stored, 'This release').content as ReleaseContent,
    };
  }

  /** The bytes as they were archived; altered ones are refused by the store. */
  async pdf({ releaseId }: Input<typeof releaseOperations.releasePdf>): Promise<StreamableFile> {
    const release = found(
      await this.reads.models.release.findUnique({
        where: { id: releaseId },
        select: { number: true, fileHash: true },
      }),
      'This release',
    );
    const bytes = await this.files.read(release.fileHash);
    return new StreamableFile(bytes, {
      type: 'application/pdf',
      disposition: `inline; filename="${release.number}.pdf"`,
    });
  }
}

function releaseRow(row: ListedRow) {
  return {
    id: row.id,
    number: row.number,
    workOrder: { id: row.work_order_id, number: row.work_order_number },
    unit: { designation: row.designation, serial: row.serial },
    customer: row.customer,
    word: row.word as RecordWord,
    releasedAt: row.released_at.toISOString(),
    approvedBy: { id: row.person_id, displayName: row.display_name, initials: row.initials },
    fileHash: row.file_hash,
    contentHash: row.content_hash,
    version: row.version,
    supersedes: row.supersedes,
    supersededBy: row.superseded_by,
  };
}
