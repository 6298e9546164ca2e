import type { Subject } from '../../platform/command/command.ts';
import { nextNumbers } from '../../platform/database/counters.ts';
import { toDbDate } from '../../platform/database/dates.ts';
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
  await tx.lot.createMany({
    data: lots.map(({ row, id, code }) => ({
      id,
      code,
      partId: row.part.id,
      state: 'quarantine',
      origin: 'opening',
      sourceClass: row.sourceClass,
      supplierLot: row.supplierLot,
      certificate: row.certificate,
      cureDate: row.cureDate,
      expiresOn: row.expiresOn ? toDbDate(row.expiresOn) : null,
      serial: row.serial,
      unitPrice: row.unitPrice,
      receivedAt: now,
    })),
  });
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
  await tx.openingLot.createMany({
    data: lots.map(({ row, id }) => ({
      ...{ lotId: id, rowKey: row.rowKey, quantity: row.quantity, bin: row.bin },
      ...{ importId, entryId },
    })),
  });
  return lots.map(({ id }) => ({ kind: 'lot', id, after: 2 }));
}
