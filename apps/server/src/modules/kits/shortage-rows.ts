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

/** Shortages added up by part, the first day to order first, then the first need. */
export function shortageRows(covers: readonly LineCover[], parts: readonly SupplierRow[]) {
  const bought = new Map(parts.map((part) => [part.id, part]));
  const groups = new Map<string, LineCover[]>();
  for (const cover of covers) {
    const id = cover.row.part.id;
    const group = groups.get(id);
    if (group) group.push(cover);
    else groups.set(id, [cover]);
  }
  return [...groups.values()].map((lines) => shortageRow(lines, bought)).sort((a, b) => key(a).localeCompare(key(b)));
}

function key(row: { orderBy: string | null; firstNeed: string; part: { number: string } }): string {
  return `${row.orderBy ?? '9999-12-31'} ${row.firstNeed} ${row.part.number}`;
}

function shortageRow(lines: readonly LineCover[], bought: ReadonlyMap<string, SupplierRow>) {
  const [first] = lines;
  if (!first) throw new Error('A shortage has at least one line');
  const { part, leadTimeDays } = first.row;
  const { packSize, unitPrice, supplier } = bought.get(part.id) ?? { packSize: 1, unitPrice: '0', supplier: null };
  const short = lines.reduce((sum, line) => sum + line.short, 0);
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
