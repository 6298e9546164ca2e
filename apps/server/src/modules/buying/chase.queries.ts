import { partWords } from '@hubwright/contracts/inventory/quantity';
import type { Input, Reply } from '@hubwright/contracts/operation';
import { chaseCauses, type orderOperations } from '@hubwright/contracts/purchasing/order-operations';
import { Inject, Injectable } from '@nestjs/common';
import { CLOCK, type Clock } from '../../platform/command/clock.ts';
import { ShopZone } from '../../platform/command/shop-zone.ts';
import { Reads } from '../../platform/database/reads.ts';
import { KitCover, type LineCover } from '../kits/public.ts';

type Row = Reply<typeof orderOperations.listToChase>['rows'][number];
type LineRow = Omit<Row, 'causes' | 'kits' | 'sentence'> & {
  readonly sentRevision: number | null;
  readonly quantity: number;
  readonly confirmedQuantity: number | null;
};

const openSql = `
  SELECT ol.id AS "lineId", json_build_object('id', o.id, 'number', o.number, 'revision', o.revision) AS "order", o.sent_revision AS "sentRevision",
    json_build_object('id', s.id, 'name', s.name, 'phone', s.phone, 'email', s.email) AS supplier,
    json_build_object('id', p.id, 'number', p.number, 'description', p.description, 'issueUnit', p.issue_unit) AS part,
    ol.quantity, ol.quantity - ol.received AS open, ol.due_on::text AS "askedFor", ol.confirmed_on::text AS "confirmedOn",
    ol.confirmed_quantity AS "confirmedQuantity"
  FROM purchase_order_lines ol JOIN purchase_orders o ON o.id = ol.order_id JOIN suppliers s ON s.id = o.supplier_id JOIN parts p ON p.id = ol.part_id
  WHERE o.state = 'ordered' AND ol.received < ol.quantity
    AND ($1::text IS NULL OR o.number ILIKE $1 OR p.number ILIKE $1 OR s.name ILIKE $1) ORDER BY ol.id LIMIT 5000`;

/** What to ring suppliers about today, what holds up a kit first. */
@Injectable()
export class ChaseQueries {
  constructor(
    @Inject(Reads) private readonly reads: Reads,
    @Inject(KitCover) private readonly cover: KitCover,
    @Inject(CLOCK) private readonly clock: Clock,
    @Inject(ShopZone) private readonly zone: ShopZone,
  ) {}

  async list({ search, after, limit }: Input<typeof orderOperations.listToChase>) {
    const today = await this.zone.today(this.clock.now());
    const [lines, covers] = await Promise.all([
      this.reads.sql<LineRow>(openSql, [search ? `%${search}%` : null]),
      this.cover.ofOpenKits(),
    ]);
    const heldUp = heldUpBy(covers);
    const rows = lines.flatMap((line) => rowOf(line, heldUp.get(line.lineId) ?? [], today)).sort(graver);
    const start = after ? rows.findIndex(({ lineId }) => lineId === after) + 1 : 0;
    const shown = rows.slice(start, start + limit);
    return { rows: shown, next: start + limit < rows.length ? (shown.at(-1)?.lineId ?? null) : null };
  }
}

/** Kits that wait for an order line beyond the day they need it, one row a kit whatever number of its lines wait. */
function heldUpBy(covers: readonly LineCover[]): Map<string, Row['kits']> {
  const found = new Map<string, Map<string, Row['kits'][number]>>();
  for (const { row, pegs } of covers)
    for (const { kind, id, quantity, date } of pegs) {
      if (kind !== 'order' || date <= row.needBy) continue;
      const kits = found.get(id) ?? new Map<string, Row['kits'][number]>();
      const before = kits.get(row.kitId)?.quantity ?? 0;
      const { kitId, kitCode, needBy } = row;
      found.set(id, kits.set(kitId, { kitId, kitCode, needBy, quantity: before + quantity }));
    }
  const byNeed = (one: { needBy: string }, other: { needBy: string }) => (one.needBy < other.needBy ? -1 : 1);
  return new Map([...found].map(([id, kits]) => [id, [...kits.values()].sort(byNeed)]));
}

function rowOf(line: LineRow, kits: Row['kits'], today: string): Row[] {
  const { sentRevision, quantity, confirmedQuantity, ...shown } = line;
  const expected = line.confirmedOn ?? line.askedFor;
  const is: Record<(typeof chaseCauses)[number], boolean> = {
    late: expected < today,
    'confirmed-late': line.confirmedOn !== null && line.confirmedOn > line.askedFor,
    'confirmed-short': confirmedQuantity !== null && confirmedQuantity < quantity,
    'not-sent': sentRevision === null || sentRevision < line.order.revision,
    'not-confirmed': line.confirmedOn === null,
  };
  const causes = chaseCauses.filter((cause) => is[cause]);
  if (causes.length === 0 && kits.length === 0) return [];
  return [{ ...shown, causes, kits, sentence: sentenceOf(line, { causes, kits, expected }) }];
}

type Found = { causes: Row['causes']; kits: Row['kits']; expected: string };

function sentenceOf(line: LineRow, { causes, kits, expected }: Found): string {
  const what = `${partWords(line.open, line.part)} of ${line.order.number}`;
  const words: Record<Row['causes'][number], string> = {
    late: `was to come ${expected} and has not`,
    'confirmed-late': `is confirmed for ${line.confirmedOn}, asked for ${line.askedFor}`,
    'confirmed-short': `is confirmed for ${line.confirmedQuantity} of ${line.quantity}`,
    'not-sent':
      line.sentRevision === null ? 'was never sent' : `has revision ${line.order.revision}, which was not sent`,
    'not-confirmed': 'is not confirmed',
  };
  const said = causes.map((cause) => words[cause]).join(', ') || `comes ${expected}`;
  const [first, ...more] = kits;
  const holds = first ? ` ${first.kitCode} needs ${first.quantity} by ${first.needBy}` : '';
  const others = more.length > 0 ? ` and ${more.length === 1 ? 'one more waits' : `${more.length} more wait`}` : '';
  return `${what} ${said}.${holds}${others}${first ? '.' : ''}`;
}

/** Held-up kits by their need, then the gravest cause, then the day. */
function graver(one: Row, other: Row): number {
  const key = ({ kits, causes, confirmedOn, askedFor, lineId }: Row) =>
    [
      kits[0]?.needBy ?? '9999-12-31',
      chaseCauses.indexOf(causes[0] ?? 'not-confirmed'),
      confirmedOn ?? askedFor,
      lineId,
    ].join(' ');
  return key(one) < key(other) ? -1 : 1;
}
