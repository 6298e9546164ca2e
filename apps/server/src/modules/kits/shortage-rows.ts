import { expectedOf } from './expected-words.ts';
import type { ForeseenCover } from './foreseen-cover.ts';
import type { LineCover } from './line-cover.ts';

/** How a part is bought. */
export interface SupplierRow {
  readonly id: string;
  readonly packSize: number;
  readonly unitPrice: string;
  readonly supplier: { readonly id: string; readonly name: string } | null;
}

export const supplierSql = `
  SELECT p.id, p.pack_size AS "packSize", p.unit_price AS "unitPrice",
    CASE WHEN s.id IS NOT NULL THEN json_build_object('id', s.id, 'name', s.name) END AS supplier
  FROM parts p LEFT JOIN suppliers s ON s.id = p.supplier_id WHERE p.id = ANY($1::uuid[])`;

/** Kit lines named one by one; a part that hundreds of kits wait for is not read line by line. Lines come by need date. */
const named = 50;

interface Expecting {
  /** What is expected of a part beside its kits. */
  readonly of: (partId: string) => ForeseenCover | undefined;
  /** Parts to be shown although no kit is short of them. */
  readonly alone: readonly ForeseenCover[];
}

/** Shortages added up by part, the first day to order first, then the first need. */
export function shortageRows(covers: readonly LineCover[], parts: readonly SupplierRow[], expecting: Expecting) {
  const bought = new Map(parts.map((part) => [part.id, part]));
  const groups = new Map<string, LineCover[]>();
  for (const cover of covers) {
    const id = cover.row.part.id;
    const group = groups.get(id);
    if (group) group.push(cover);
    else groups.set(id, [cover]);
  }
  const rows = [...groups.values()].map((lines) => shortageRow(lines, bought, expecting));
  const alone = expecting.alone.map((cover) => expectedRow(cover, bought));
  return [...rows, ...alone].sort((a, b) => (key(a) < key(b) ? -1 : 1));
}

function key(row: ReturnType<typeof shortageRow>): string {
  const orderBy = row.kitLines === 0 ? row.expected?.orderBy : row.orderBy;
  return `${orderBy ?? '9999-12-31'} ${row.firstNeed} ${row.part.number}`;
}

function shortageRow(lines: readonly LineCover[], bought: ReadonlyMap<string, SupplierRow>, { of }: Expecting) {
  const [first] = lines;
  if (!first) throw new Error('A shortage has at least one line');
  const { part, leadTimeDays } = first.row;
  const { packSize, unitPrice, supplier } = bought.get(part.id) ?? { packSize: 1, unitPrice: '0', supplier: null };
  const short = lines.reduce((sum, line) => sum + line.short, 0);
  const expected = of(part.id);
  const days = lines.flatMap(({ orderBy }) => (orderBy ? [orderBy] : [])).sort();
  return {
    part,
    short,
    late: lines.reduce((sum, { late }) => sum + late, 0),
    ...likelyPart(lines),
    firstNeed: lines.map(({ row }) => row.needBy).sort()[0] ?? first.row.needBy,
    orderBy: days[0] ?? null,
    leadTimeDays,
    supplier,
    unitPrice,
    packSize,
    suggested: Math.ceil(short / packSize) * packSize,
    kitLines: lines.length,
    kits: lines.slice(0, named).map(({ row, short: missing, late }) => ({
      kitId: row.kitId,
      kitCode: row.kitCode,
      lineId: row.lineId,
      position: row.position,
      quantity: missing + late,
      needBy: row.needBy,
    })),
    sentences: lines.slice(0, named).map(({ sentence }) => sentence),
    expected: expected ? expectedOf(expected) : null,
  };
}

/** A part that no kit is short of, but what is expected. */
function expectedRow(cover: ForeseenCover, bought: ReadonlyMap<string, SupplierRow>): ReturnType<typeof shortageRow> {
  const { id, number, description, issueUnit, leadTimeDays } = cover.part;
  const { packSize, unitPrice, supplier } = bought.get(id) ?? { packSize: 1, unitPrice: '0', supplier: null };
  const expected = expectedOf(cover);
  return {
    ...{ part: { id, number, description, issueUnit }, short: 0, late: 0, likelyShort: 0, likelyWeighed: 0 },
    ...{ firstNeed: expected.firstNeed, orderBy: null, leadTimeDays, supplier, unitPrice, packSize, suggested: 0 },
    ...{ kitLines: 0, kits: [], sentences: [], expected },
  };
}

/** Shortages of work that no customer has approved yet: whole, and weighed by how likely it is. */
function likelyPart(lines: readonly LineCover[]): { likelyShort: number; likelyWeighed: number } {
  const likely = lines.filter((line) => line.likely !== null);
  return {
    likelyShort: likely.reduce((sum, line) => sum + line.short, 0),
    likelyWeighed: Math.ceil(likely.reduce((sum, line) => sum + line.short * (line.likely ?? 0), 0) / 100),
  };
}
