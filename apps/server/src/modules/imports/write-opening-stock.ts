import type { Subject } from '../../platform/command/command.ts';
import { nextNumbers } from '../../platform/database/counters.ts';
import { moveMany, quarantine } from '../inventory/public.ts';
import type { Writing } from './table.ts';

/** A row of opening stock that is a new lot. */
export interface OpeningRow {
  readonly part: { readonly id: string; readonly number: string };
  readonly quantity: number;
  readonly bin: string;
  readonly sourceClass: string;
  readonly rowKey: string;
  readonly serial: string | null;
  readonly supplierLot: string;
  readonly certificate: string;
  readonly cureDate: string | null;
  readonly expiresOn: string | null;
  readonly unitPrice: string;
}

/** Lots in quarantine and a movement each: whoever is authorised accepts them afterwards, all at once, by signature. */
export async function writeOpeningStock(
  context: Writing,
  importId: string,
  rows: readonly OpeningRow[],
): Promise<readonly Subject[]> {
  const { tx, now, newId, entryId } = context;
  const codes = await nextNumbers(tx, { kind: 'LOT', width: 5, count: rows.length });
  const lots = rows.map((row, index) => ({ row, id: newId(), code: codes[index] as string }));
  await tx.$executeRaw`
    INSERT INTO lots (id, code, part_id, state, origin, source_class, supplier_lot, certificate, cure_date, expires_on, serial,
      unit_price, received_at)
    SELECT id, code, "partId", 'quarantine', 'opening', "sourceClass", "supplierLot", certificate, "cureDate", "expiresOn", serial,
      "unitPrice", ${now}
    FROM jsonb_to_recordset(${JSON.stringify(lots.map(({ row, id, code }) => ({ ...row, id, code, partId: row.part.id })))}::jsonb)
      AS n(id uuid, code text, "partId" uuid, "sourceClass" text, "supplierLot" text, certificate text, "cureDate" text,
        "expiresOn" date, serial text, "unitPrice" text)`;
  await moveMany(
    context,
    lots.map(({ row, id, code }) => ({
      lot: { id, code, partId: row.part.id },
      quantity: row.quantity,
      from: { kind: 'supplier', ref: '' },
      to: quarantine,
      reason: 'opening stock',
    })),
  );
  const kept = lots.map(({ row, id }) => ({
    id: newId(),
    lot: id,
    key: row.rowKey,
    quantity: row.quantity,
    bin: row.bin,
  }));
  await tx.$executeRaw`
    INSERT INTO opening_lots (id, lot_id, row_key, quantity, bin, import_id, entry_id)
    SELECT id, lot, key, quantity, bin, ${importId}::uuid, ${entryId}::uuid
    FROM jsonb_to_recordset(${JSON.stringify(kept)}::jsonb) AS n(id uuid, lot uuid, key text, quantity int, bin text)`;
  return lots.map(({ id }) => ({ kind: 'lot', id, after: 2 }));
}
