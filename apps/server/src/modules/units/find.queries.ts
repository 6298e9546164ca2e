import type { Input, Reply } from '@hubwright/contracts/operation';
import type { unitOperations } from '@hubwright/contracts/units/operations';
import { Inject, Injectable } from '@nestjs/common';
import { Reads } from '../../platform/database/reads.ts';

type Found = Reply<typeof unitOperations.find>['rows'][number];

interface Source {
  readonly kind: Found['kind'];
  readonly path: string;
  /** FROM clause, the code a scan carries, what else is searched, and what to show. Written here, never put in from outside. */
  readonly from: string;
  readonly code: string;
  readonly also?: string;
  readonly title: string;
  readonly detail: string;
}

const sources: readonly Source[] = [
  {
    kind: 'work-order',
    path: '/work-orders/',
    from: 'work_orders t JOIN customers c ON c.id = t.customer_id JOIN unit_models m ON m.id = t.model_id',
    code: 't.number',
    title: 't.number',
    detail: "m.designation || ', ' || c.name",
  },
  {
    kind: 'unit',
    path: '/units/',
    from: "serialized_items t JOIN unit_models m ON m.id = t.model_id AND t.kind = 'assembly'",
    code: 't.serial',
    title: 't.serial',
    detail: "m.maker || ' ' || m.designation",
  },
  {
    kind: 'part-of-unit',
    path: '/units/',
    from: "(SELECT * FROM serialized_items WHERE kind <> 'assembly') t",
    code: 't.serial',
    title: 't.serial',
    detail: "t.kind || ' ' || t.maker || ' ' || t.part_number",
  },
  {
    kind: 'traveler',
    path: '/travelers/',
    from: 'travelers t JOIN work_orders w ON w.id = t.work_order_id',
    code: 't.number',
    title: 't.number',
    detail: "t.title || ', ' || w.number",
  },
  {
    kind: 'kit',
    path: '/kits/',
    from: 'kits t JOIN work_orders w ON w.id = t.work_order_id',
    code: 't.code',
    title: 't.code',
    detail: "'kit of ' || w.number",
  },
  {
    kind: 'lot',
    path: '/lots/',
    from: 'lots t JOIN parts p ON p.id = t.part_id',
    code: 't.code',
    title: 't.code',
    detail: "p.number || ', ' || t.state",
  },
  {
    kind: 'part',
    path: '/parts/',
    from: 'parts t',
    code: 't.number',
    also: 't.description',
    title: 't.number',
    detail: 't.description',
  },
  {
    kind: 'order',
    path: '/orders/',
    from: 'purchase_orders t JOIN suppliers s ON s.id = t.supplier_id',
    code: 't.number',
    title: 't.number',
    detail: "s.name || ', ' || t.state",
  },
  {
    kind: 'supplier',
    path: '/suppliers/',
    from: 'suppliers t',
    code: 't.code',
    also: 't.name',
    title: 't.name',
    detail: 't.code',
  },
  {
    kind: 'customer',
    path: '/customers/',
    from: 'customers t',
    code: 't.code',
    also: 't.name',
    title: 't.name',
    detail: 't.code',
  },
  {
    kind: 'aircraft',
    path: '/customers/',
    from: 'aircraft t JOIN customers c ON c.id = t.customer_id',
    code: 't.registration',
    title: 't.registration',
    detail: "t.airframe || ', ' || c.name",
  },
  {
    kind: 'instrument',
    path: '/instruments/',
    from: 'instruments t',
    code: 't.tag',
    also: 't.title',
    title: 't.tag',
    detail: 't.title',
  },
  {
    kind: 'field-balance',
    path: '/on-aircraft/',
    from: 'field_balances t JOIN aircraft a ON a.id = t.aircraft_id JOIN serialized_items u ON u.id = t.unit_id',
    code: 't.number',
    title: 't.number',
    detail: "'balance of ' || coalesce(u.serial, '') || ' on ' || a.registration",
  },
];

function columns({ kind, path, code, title, detail }: Source): string {
  // An aircraft has no page of its own: it is on its customer's.
  const page = kind === 'aircraft' ? 't.customer_id' : 't.id';
  return `SELECT '${kind}' AS kind, t.id::text AS id, ${title} AS title, ${detail} AS detail, '${path}' || ${page} AS path, ${code} = $1 AS exact`;
}

const exactSql = sources
  .map((source) => `(${columns(source)} FROM ${source.from} WHERE ${source.code} = $1 LIMIT $2)`)
  .join(' UNION ALL ');

// Trigram indexes need three characters; each kind brings at most a page, so that one kind cannot drown the others.
const containsSql = sources
  .map((source) => {
    const matches = [source.code, ...(source.also ? [source.also] : [])]
      .map((column) => `${column} ILIKE $3`)
      .join(' OR ');
    return `(${columns(source)} FROM ${source.from} WHERE (${matches}) AND ${source.code} <> $1 ORDER BY ${source.code} LIMIT $2)`;
  })
  .join(' UNION ALL ');

/** The barcode beside a step on paper: its traveler's number and the end of its id. */
const stepCode = /^(TR-\d+)\.([0-9A-F]{6})$/;
const stepSql = `SELECT 'traveler-step' AS kind, s.id::text AS id, s.sequence || '. ' || s.title AS title,
    t.number || ' ' || t.title || ', ' || w.number AS detail, '/travelers/' || t.id || '?step=' || s.id AS path, true AS exact
  FROM travelers t JOIN work_orders w ON w.id = t.work_order_id JOIN traveler_steps s ON s.traveler_id = t.id
  WHERE t.number = $1 AND upper(right(s.id::text, 6)) = $2 LIMIT 2`;

@Injectable()
export class FindQueries {
  constructor(@Inject(Reads) private readonly reads: Reads) {}

  /** A scan is an exact code and needs index look-ups only; anything else is searched for by its pieces. */
  async find({ text, limit }: Input<typeof unitOperations.find>): Promise<Reply<typeof unitOperations.find>> {
    const code = text.replaceAll(/\s+/g, ' ').toUpperCase();
    const [, number, tail] = stepCode.exec(code) ?? [];
    if (number && tail) return { rows: await this.reads.sql<Found>(stepSql, [number, tail]) };
    const exact = await this.reads.sql<Found>(exactSql, [code, limit]);
    if (exact.length > 0 || code.length < 2) return { rows: exact.slice(0, limit) };
    const pattern = `%${code.replaceAll(/[\\%_]/g, '\\$&')}%`;
    const rows = await this.reads.sql<Found>(containsSql, [code, limit, pattern]);
    return { rows: rows.slice(0, limit) };
  }
}
