import { Readable } from 'node:stream';
import type { ExportList } from '@hubwright/contracts/imports/kinds';
import { type CellValue, csvLine, csvMark } from '@hubwright/rules/csv';
import { Inject, Injectable } from '@nestjs/common';
import { Reads } from '../../platform/database/reads.ts';
import { Slots } from '../../platform/http/slots.ts';

interface List {
  /** What heads a column, and what stands in it. */
  readonly columns: readonly (readonly [head: string, value: string])[];
  readonly from: string;
}

const lists: Record<ExportList, List> = {
  // Headed as the import reads it, so that a file can be changed and brought back.
  parts: {
    columns: [
      ['part number', 'p.number'],
      ['maker', 'p.maker'],
      ['description', 'p.description'],
      ['class', 'p.class'],
      ['issue unit', 'p.issue_unit'],
      ['pack size', 'p.pack_size'],
      ['certificate required', "CASE WHEN p.certificate_required THEN 'yes' ELSE 'no' END"],
      ['serialized', "CASE WHEN p.serialised THEN 'yes' ELSE 'no' END"],
      ['shelf life months', 'p.shelf_life_months'],
      ['minimum days at build', 'p.minimum_days_at_build'],
      ['lead time days', 'p.lead_time_days'],
      ['unit price', 'p.unit_price'],
      ['supplier code', 's.code'],
      ['home bin', 'p.home_bin'],
    ],
    from: 'parts p LEFT JOIN suppliers s ON s.id = p.supplier_id ORDER BY p.number',
  },
  stock: {
    columns: [
      ['part number', 'p.number'],
      ['description', 'p.description'],
      ['place', 'b.place_kind'],
      ['bin', 'b.place_ref'],
      ['lot', 'l.code'],
      ['state', 'l.state'],
      ['on hand', 'b.on_hand'],
      ['unit', 'p.issue_unit'],
      ['expires', 'l.expires_on::text'],
      ['unit price', 'l.unit_price'],
    ],
    from: `balances b JOIN lots l ON l.id = b.lot_id JOIN parts p ON p.id = l.part_id
      WHERE b.on_hand > 0 AND b.place_kind IN ('bin', 'quarantine') ORDER BY p.number, l.code, b.place_ref`,
  },
  lots: {
    columns: [
      ['lot', 'l.code'],
      ['part number', 'p.number'],
      ['description', 'p.description'],
      ['state', 'l.state'],
      ['origin', 'l.origin'],
      ['source', 'l.source_class'],
      ['supplier lot', 'l.supplier_lot'],
      ['certificate', 'l.certificate'],
      ['cure date', 'l.cure_date'],
      ['expires', 'l.expires_on::text'],
      ['serial', 'l.serial'],
      ['owner', 'c.code'],
      ['unit price', 'l.unit_price'],
      ['received', 'l.received_at::text'],
      [
        'on hand',
        "(SELECT coalesce(sum(b.on_hand), 0)::int FROM balances b WHERE b.lot_id = l.id AND b.place_kind IN ('bin', 'quarantine'))",
      ],
    ],
    from: 'lots l JOIN parts p ON p.id = l.part_id LEFT JOIN customers c ON c.id = l.owner_id ORDER BY l.code',
  },
  movements: {
    columns: [
      ['number', 'm.sequence::int'],
      ['at', 'm.at::text'],
      ['part number', 'p.number'],
      ['lot', 'l.code'],
      ['quantity', 'm.quantity'],
      ['from', "trim(m.from_kind || ' ' || CASE WHEN m.from_kind = 'bin' THEN m.from_ref ELSE '' END)"],
      ['to', "trim(m.to_kind || ' ' || CASE WHEN m.to_kind = 'bin' THEN m.to_ref ELSE '' END)"],
      ['kit', 'k.code'],
      ['position', 'm.position'],
      ['reason', 'm.reason'],
      ['person', 'w.display_name'],
    ],
    from: `movements m JOIN lots l ON l.id = m.lot_id JOIN parts p ON p.id = m.part_id
      LEFT JOIN kit_lines kl ON kl.id = m.kit_line_id LEFT JOIN kits k ON k.id = kl.kit_id
      LEFT JOIN people w ON w.id = m.person_id ORDER BY m.sequence`,
  },
  orders: {
    columns: [
      ['order', 'o.number'],
      ['supplier', 's.code'],
      ['state', 'o.state'],
      ['ordered', 'o.ordered_on::text'],
      ['line', 'ol.sequence'],
      ['part number', 'p.number'],
      ['description', 'p.description'],
      ['quantity', 'ol.quantity'],
      ['received', 'ol.received'],
      ['due', 'ol.due_on::text'],
      ['unit price', 'ol.unit_price'],
    ],
    from: `purchase_orders o JOIN purchase_order_lines ol ON ol.order_id = o.id JOIN parts p ON p.id = ol.part_id
      JOIN suppliers s ON s.id = o.supplier_id ORDER BY o.number, ol.sequence`,
  },
  // A line for each price, headed as the import reads it.
  offers: {
    columns: [
      ['supplier code', 's.code'],
      ['part number', 'p.number'],
      ['supplier part number', 'f.supplier_part_number'],
      ['unit price', "b.value ->> 'unitPrice'"],
      ['from quantity', "(b.value ->> 'from')::int"],
      ['pack size', 'f.pack_size'],
      ['least quantity', 'f.minimum'],
      ['lead time days', 'f.lead_time_days'],
      ['preference', 'f.preference'],
      ['valid from', 'f.valid_from::text'],
      ['valid until', 'f.valid_until::text'],
    ],
    from: `part_offers f JOIN parts p ON p.id = f.part_id JOIN suppliers s ON s.id = f.supplier_id,
      jsonb_array_elements(f.breaks) WITH ORDINALITY b(value, place) ORDER BY s.code, p.number, f.valid_from NULLS FIRST, b.place`,
  },
  suppliers: {
    columns: [
      ['supplier code', 's.code'],
      ['name', 's.name'],
      ['e-mail', 's.email'],
      ['phone', 's.phone'],
      ['approved until', 's.approved_until::text'],
      ['least order', 's.least_order'],
    ],
    from: 'suppliers s ORDER BY s.code',
  },
  'kit-lines': {
    columns: [
      ['kit', 'k.code'],
      ['work order', 'w.number'],
      ['state', 'k.state'],
      ['need by', 'k.need_by::text'],
      ['line', 'kl.sequence'],
      ['part number', 'p.number'],
      ['description', 'p.description'],
      ['position', 'kl.position'],
      ['quantity', 'kl.quantity'],
      ['minimum', 'kl.minimum'],
      ['source', 'kl.source'],
      ['unit', 'p.issue_unit'],
      ['promised', '(SELECT coalesce(sum(r.quantity), 0)::int FROM reservations r WHERE r.kit_line_id = kl.id)'],
    ],
    from: `kit_lines kl JOIN kits k ON k.id = kl.kit_id JOIN work_orders w ON w.id = k.work_order_id
      JOIN parts p ON p.id = kl.part_id ORDER BY k.code, kl.sequence`,
  },
  // What waits for a second look stays untold, as on the page.
  counts: {
    columns: [
      ['at', 'n.counted_at::text'],
      ['lot', 'l.code'],
      ['part number', 'p.number'],
      ['place', "trim(n.place_kind || ' ' || CASE WHEN n.place_kind = 'bin' THEN n.place_ref ELSE '' END)"],
      ['state', 'n.state'],
      ['counted', "CASE WHEN n.state IN ('posted', 'approved') THEN n.counted END"],
      ['difference', "CASE WHEN n.state IN ('posted', 'approved') THEN n.counted - n.on_book END"],
      ['reason', 'n.reason'],
      ['counted by', 'w.display_name'],
      ['decided by', 'd.display_name'],
    ],
    from: `lot_counts n JOIN lots l ON l.id = n.lot_id JOIN parts p ON p.id = l.part_id
      LEFT JOIN people w ON w.id = n.counted_by LEFT JOIN people d ON d.id = n.decided_by ORDER BY n.counted_at, n.id`,
  },
};

function textOf({ columns, from }: List): string {
  return `SELECT ${columns.map(([head, value]) => `${value} AS "${head}"`).join(', ')} FROM ${from}`;
}

/** Whole lists as CSV, in constant memory: read through a cursor, handed on as they come. */
@Injectable()
export class ExportQueries {
  private readonly slots = new Slots(3, 1, 'lists are being exported');

  constructor(@Inject(Reads) private readonly reads: Reads) {}

  /** Throws `busy` while this person’s last one still goes on: each holds a connection. */
  stream(list: ExportList, personId: string): Readable {
    const leave = this.slots.enter(personId);
    const lines = this.lines(list);
    return Readable.from(lines).once('close', leave);
  }

  private async *lines(list: ExportList): AsyncGenerator<string> {
    let some = csvMark + csvLine(lists[list].columns.map(([head]) => head));
    for await (const row of this.reads.each<Record<string, CellValue>>(textOf(lists[list]))) {
      some += csvLine(Object.values(row));
      if (some.length < 64_000) continue;
      yield some;
      some = '';
    }
    yield some;
  }
}
