import type { receivingOperations } from '@hubwright/contracts/inventory/receiving-operations';
import type { Input } from '@hubwright/contracts/operation';
import { Inject, Injectable, StreamableFile } from '@nestjs/common';
import { found } from '../../platform/command/version.ts';
import { fromDbDateOrNull } from '../../platform/database/dates.ts';
import { Reads } from '../../platform/database/reads.ts';
import { labelRoll } from '../../platform/print/label-roll.ts';
import { Paper } from '../../platform/print/paper.ts';
import { rollSize } from './roll-size.ts';

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

  /** The code as bars with its letters: what a bag or bin is found by again; on sheets, or one after the other on a roll. */
  async labels({ lotId, copies, form }: Input<typeof receivingOperations.lotLabelsPdf>): Promise<StreamableFile> {
    const [read, shop] = await Promise.all([
      this.reads.models.lot.findUnique({ where: { id: lotId }, include: { part: true } }),
      this.reads.models.shopProfile.findUnique({ where: { id: 1 } }),
    ]);
    const [lot, { name: shopName }] = [found(read, 'This lot'), found(shop, 'The shop profile')];
    const size = rollSize(form);
    const bytes = size ? await onRoll(lot, { shopName, copies, size }) : await onSheets(lot, { shopName, copies });
    const disposition = `inline; filename="${lot.code}-labels.pdf"`;
    return new StreamableFile(bytes, { type: 'application/pdf', disposition });
  }
}

interface LabelledLot {
  readonly code: string;
  readonly supplierLot: string;
  readonly certificate: string;
  readonly serial: string | null;
  readonly expiresOn: Date | null;
  readonly receivedAt: Date;
  readonly part: { readonly number: string; readonly description: string };
}

function onSheets(lot: LabelledLot, { shopName, copies }: { shopName: string; copies: number }): Promise<Buffer> {
  const paper = new Paper({
    ...{ title: `Lot ${lot.code}`, shopName, at: lot.receivedAt },
    foot: `${lot.code}   ·   ${lot.part.number}`,
  });
  const facts = [
    ['Part', `${lot.part.number} ${lot.part.description}`],
    ['Supplier’s lot', lot.supplierLot],
    ['Certificate', lot.certificate],
    ['Serial', lot.serial ?? ''],
    ['Do not use from', fromDbDateOrNull(lot.expiresOn) ?? ''],
  ] as const;
  paper.barcode(lot.code).facts(facts);
  for (let copy = 1; copy < copies; copy++) paper.sheet(`Lot ${lot.code}`, lot.code).facts(facts);
  return paper.finish();
}

/** On little room what can hurt comes first: from when it may not be used, then which piece and lot it is. */
function onRoll(
  lot: LabelledLot,
  { shopName, copies, size }: { shopName: string; copies: number; size: NonNullable<ReturnType<typeof rollSize>> },
): Promise<Buffer> {
  const expires = fromDbDateOrNull(lot.expiresOn);
  const label = {
    ...{ code: lot.code, head: lot.part.number },
    lines: [
      expires ? `Do not use from ${expires}` : '',
      lot.serial ? `Serial ${lot.serial}` : '',
      [lot.supplierLot ? `Lot ${lot.supplierLot}` : '', lot.certificate ? `certificate ${lot.certificate}` : '']
        .filter((text) => text !== '')
        .join(', '),
      lot.part.description,
    ],
  };
  const options = { title: `Lot ${lot.code}`, author: shopName, at: lot.receivedAt, ...size };
  return labelRoll(
    options,
    Array.from({ length: copies }, () => label),
  );
}
