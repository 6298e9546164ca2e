import type { receivingOperations } from '@hubwright/contracts/inventory/receiving-operations';
import type { Input } from '@hubwright/contracts/operation';
import { Inject, Injectable, StreamableFile } from '@nestjs/common';
import { found } from '../../platform/command/version.ts';
import { fromDbDateOrNull } from '../../platform/database/dates.ts';
import { Reads } from '../../platform/database/reads.ts';
import { Paper } from '../../platform/print/paper.ts';

const checklistsSql = `
  SELECT c.id, c.part_class AS "partClass", c.revision, c.items, to_char(c.at AT TIME ZONE 'UTC', 'YYYY-MM-DD"T"HH24:MI:SS.MS"Z"') AS at,
    json_build_object('id', p.id, 'displayName', p.display_name) AS person
  FROM receiving_checklists c JOIN people p ON p.id = c.person_id
  WHERE NOT EXISTS (SELECT 1 FROM receiving_checklists n WHERE n.part_class = c.part_class AND n.revision > c.revision)
    AND ($1::text IS NULL OR c.part_class = $1) AND ($2::text IS NULL OR c.part_class > $2) ORDER BY c.part_class LIMIT $3`;

@Injectable()
export class ReceivingQueries {
  constructor(@Inject(Reads) private readonly reads: Reads) {}

  async checklists({ partClass, after, limit }: Input<typeof receivingOperations.listChecklists>) {
    const parameters = [partClass ?? null, after ?? null, limit + 1];
    const rows = await this.reads.sql<{ partClass: string }>(checklistsSql, parameters);
    const shown = rows.slice(0, limit);
    return { rows: shown, next: rows.length > limit ? (shown.at(-1)?.partClass ?? null) : null };
  }

  /** One label a sheet, the code as bars under its letters: what a bag or bin is found by again. */
  async labels({ lotId, copies }: Input<typeof receivingOperations.lotLabelsPdf>): Promise<StreamableFile> {
    const [lot, shop] = await Promise.all([
      this.reads.models.lot.findUnique({ where: { id: lotId }, include: { part: true } }),
      this.reads.models.shopProfile.findUnique({ where: { id: 1 } }),
    ]);
    const label = found(lot, 'This lot');
    const paper = new Paper({
      ...{ title: `Lot ${label.code}`, shopName: found(shop, 'The shop profile').name, at: label.receivedAt },
      foot: `${label.code}   ·   ${label.part.number}`,
    });
    const expires = fromDbDateOrNull(label.expiresOn);
    const facts = [
      ['Part', `${label.part.number} ${label.part.description}`],
      ['Supplier’s lot', label.supplierLot],
      ['Certificate', label.certificate],
      ['Serial', label.serial ?? ''],
      ['Do not use from', expires ?? ''],
    ] as const;
    paper.barcode(label.code).facts(facts);
    for (let copy = 1; copy < copies; copy++) paper.sheet(`Lot ${label.code}`, label.code).facts(facts);
    const bytes = await paper.finish();
    const disposition = `inline; filename="${label.code}-labels.pdf"`;
    return new StreamableFile(bytes, { type: 'application/pdf', disposition });
  }
}
