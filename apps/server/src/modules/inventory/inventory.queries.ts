import type { inventoryOperations } from '@hubwright/contracts/inventory/operations';
import type { Input } from '@hubwright/contracts/operation';
import { Inject, Injectable } from '@nestjs/common';
import { CLOCK, type Clock } from '../../platform/command/clock.ts';
import { ShopZone } from '../../platform/command/shop-zone.ts';
import { found } from '../../platform/command/version.ts';
import { Reads } from '../../platform/database/reads.ts';
import { expiringSql, type LotRow, listSql, lotSql, partStockSql, placesSql, promisesSql } from './inventory.sql.ts';

@Injectable()
export class InventoryQueries {
  constructor(
    @Inject(Reads) private readonly reads: Reads,
    @Inject(CLOCK) private readonly clock: Clock,
    @Inject(ShopZone) private readonly zone: ShopZone,
  ) {}

  async listLots(input: Input<typeof inventoryOperations.listLots>) {
    const rows = await this.reads.sql<LotRow>(listSql, [
      input.search ? `%${input.search}%` : null,
      input.state ?? null,
      input.partId ?? null,
      input.after ?? null,
      input.limit + 1,
      input.bin ?? null,
    ]);
    const shown = rows.slice(0, input.limit);
    return { rows: shown.map(lotRow), next: rows.length > input.limit ? (shown.at(-1)?.code ?? null) : null };
  }

  async lotDetail({ lotId }: Input<typeof inventoryOperations.lotDetail>) {
    const [rows, places, reservations, today] = await Promise.all([
      this.reads.sql<LotDetailRow>(lotSql, [lotId]),
      this.reads.sql<{ kind: string; ref: string; title: string; onHand: number }>(placesSql, [lotId]),
      this.reads.sql<object>(promisesSql, [lotId]),
      this.zone.today(this.clock.now()),
    ]);
    const row = found(rows[0], 'This lot');
    return {
      ...lotRow(row),
      origin: row.origin,
      cureDate: row.cure_date,
      serial: row.serial,
      owner: row.owner_id ? { id: row.owner_id, name: row.owner_name ?? '' } : null,
      order: row.order_id
        ? { id: row.order_id, number: row.order_number ?? '', lineId: row.purchase_order_line_id ?? '' }
        : null,
      workOrder: row.work_order_id ? { id: row.work_order_id, number: row.work_order_number ?? '' } : null,
      receivedAt: row.received_at.toISOString(),
      note: row.note,
      unitPrice: row.unit_price,
      suspicion: row.suspicion,
      surrender: row.surrender,
      places,
      reservations,
      blocked: blocked(row, today),
    };
  }

  async expiringStock(input: Input<typeof inventoryOperations.expiringStock>) {
    const today = await this.zone.today(this.clock.now());
    const [afterDay, afterCode] = input.after?.split('~') ?? [];
    const rows = await this.reads.sql<LotRow & { days_left: number; kits: string[] }>(expiringSql, [
      today,
      input.withinDays,
      afterDay ?? null,
      afterCode ?? null,
      input.limit + 1,
    ]);
    const shown = rows.slice(0, input.limit);
    const last = shown.at(-1);
    return {
      rows: shown.map((row) => {
        const { id, code, part, expiresOn, onHand, reserved, place } = lotRow(row);
        return { lot: { id, code }, part, expiresOn, daysLeft: row.days_left, onHand, reserved, place, kits: row.kits };
      }),
      next: rows.length > input.limit && last ? `${last.expires_on}~${last.code}` : null,
    };
  }

  async listPartStock(input: Input<typeof inventoryOperations.listPartStock>) {
    const rows = await this.reads.sql<PartStockRow>(partStockSql, [
      input.search ? `%${input.search}%` : null,
      input.after ?? null,
      input.limit + 1,
      input.class ?? null,
    ]);
    const shown = rows.slice(0, input.limit);
    return {
      rows: shown.map(({ part_id, number, description, issue_unit, ...counts }) => ({
        part: { id: part_id, number, description, issueUnit: issue_unit },
        ...counts,
      })),
      next: rows.length > input.limit ? (shown.at(-1)?.number ?? null) : null,
    };
  }
}

interface LotDetailRow extends LotRow {
  origin: string;
  cure_date: string | null;
  serial: string | null;
  owner_id: string | null;
  owner_name: string | null;
  purchase_order_line_id: string | null;
  order_id: string | null;
  order_number: string | null;
  work_order_id: string | null;
  work_order_number: string | null;
  received_at: Date;
  note: string;
  unit_price: string;
  certificate_required: boolean;
  suspicion: { reason: string; reporter: string; reportedAt: string } | null;
  surrender: { letter: string; dated: string; givenBy: string } | null;
}

interface PartStockRow {
  part_id: string;
  number: string;
  description: string;
  issue_unit: string;
  have: number;
  reserved: number;
  inQuarantine: number;
  onOrder: number;
  nextArrival: string | null;
  lots: number;
}

function lotRow(row: LotRow) {
  return {
    id: row.id,
    code: row.code,
    state: row.state,
    version: row.version,
    onHand: row.on_hand,
    reserved: row.reserved,
    part: { id: row.part_id, number: row.number, description: row.description, issueUnit: row.issue_unit },
    sourceClass: row.source_class,
    supplierLot: row.supplier_lot,
    certificate: row.certificate,
    expiresOn: row.expires_on,
    place: row.place ?? '',
  };
}

function blocked(row: LotDetailRow, today: string): string[] {
  const sentences: string[] = [];
  if (row.state === 'quarantine') sentences.push('It waits in quarantine to be judged.');
  if (row.state === 'rejected') sentences.push('It was rejected.');
  if (row.suspicion)
    sentences.push(`It is held as suspected unapproved parts: ${row.suspicion.reason} (${row.suspicion.reporter}).`);
  else if (row.state === 'suspected') sentences.push('It is held as suspected unapproved parts.');
  if (row.certificate_required && row.certificate === '') sentences.push('Its certificate is missing.');
  if (row.expires_on && row.expires_on <= today)
    sentences.push(`Its shelf life ended: it expired on ${row.expires_on}.`);
  if (row.state === 'accepted' && row.on_hand === 0) sentences.push('Nothing of it is in a bin or in quarantine.');
  return sentences;
}
