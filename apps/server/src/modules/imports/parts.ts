import { Problem } from '@hubwright/contracts/problems';
import type { Subject } from '../../platform/command/command.ts';
import type { Models, Table, Writing } from './table.ts';

/** What a table may say of a part. */
export interface PartValue {
  readonly number: string;
  readonly maker: string;
  readonly description: string;
  readonly class: string;
  readonly issueUnit: string;
  readonly packSize: number;
  readonly certificateRequired: boolean;
  readonly serialised: boolean;
  readonly shelfLifeMonths: number | null;
  readonly minimumDaysAtBuild: number;
  readonly leadTimeDays: number;
  readonly unitPrice: string;
  readonly supplierId: string | null;
  readonly homeBin: string | null;
}

/** A part on record. */
export interface KnownPart extends PartValue {
  readonly id: string;
  readonly version: number;
  readonly supplierCode: string | null;
  readonly hasLots: boolean;
}

const partsSql = `
  SELECT p.id, p.version, p.number, p.maker, p.description, p.class, p.issue_unit AS "issueUnit", p.pack_size AS "packSize",
    p.certificate_required AS "certificateRequired", p.serialised, p.shelf_life_months AS "shelfLifeMonths",
    p.minimum_days_at_build AS "minimumDaysAtBuild", p.lead_time_days AS "leadTimeDays", p.unit_price AS "unitPrice",
    p.supplier_id AS "supplierId", p.home_bin AS "homeBin", s.code AS "supplierCode",
    EXISTS (SELECT FROM lots l WHERE l.part_id = p.id) AS "hasLots"
  FROM parts p LEFT JOIN suppliers s ON s.id = p.supplier_id WHERE p.number = ANY($1::text[])`;

/** What stands in one column, in capitals, each once. */
export function namesIn({ rows, mapping }: Table, field: string): string[] {
  const at = mapping[field];
  if (at === undefined) return [];
  return [...new Set(rows.map(({ cells }) => cells[at]?.trim().toUpperCase() ?? ''))].filter((name) => name !== '');
}

/** The parts on record that a table names, by number: one statement for the whole table. */
export async function partsNamed(table: Table): Promise<ReadonlyMap<string, KnownPart>> {
  const parts = await table.ask<KnownPart>(partsSql, [namesIn(table, 'number')]);
  return new Map(parts.map((part) => [part.number, part]));
}

/** Suppliers and bins on record that a table names. */
export async function knownPlaces(models: Models, table: Table, { bin }: { bin: string }) {
  const [suppliers, bins] = await Promise.all([
    models.supplier.findMany({ where: { code: { in: namesIn(table, 'supplier') } }, select: { id: true, code: true } }),
    models.bin.findMany({ where: { code: { in: namesIn(table, bin) } }, select: { code: true } }),
  ]);
  return {
    suppliers: new Map(suppliers.map(({ id, code }) => [code, id])),
    bins: new Set(bins.map(({ code }) => code)),
  };
}

export function partValue({ id: _, version: __, hasLots: ___, supplierCode: ____, ...value }: KnownPart): PartValue {
  return value;
}

interface PartToWrite {
  readonly before: KnownPart | undefined;
  readonly value: PartValue;
}

/** Two statements, however many parts. Throws `out-of-date` when one was changed by someone else in the same moment. */
export async function writeParts(context: Writing, parts: readonly PartToWrite[]): Promise<readonly Subject[]> {
  const { tx, newId } = context;
  const added = parts.filter(({ before }) => !before).map(({ value }) => ({ ...value, id: newId() }));
  await tx.$executeRaw`
    INSERT INTO parts (id, number, maker, description, class, issue_unit, pack_size, certificate_required, serialised,
      shelf_life_months, minimum_days_at_build, lead_time_days, unit_price, supplier_id, home_bin)
    SELECT id, number, maker, description, class, "issueUnit", "packSize", "certificateRequired", serialised, "shelfLifeMonths",
      "minimumDaysAtBuild", "leadTimeDays", "unitPrice", "supplierId", "homeBin"
    FROM jsonb_to_recordset(${JSON.stringify(added)}::jsonb) AS n(id uuid, number text, maker text, description text, class text,
      "issueUnit" text, "packSize" int, "certificateRequired" boolean, serialised boolean, "shelfLifeMonths" int,
      "minimumDaysAtBuild" int, "leadTimeDays" int, "unitPrice" text, "supplierId" uuid, "homeBin" text)`;
  const changed = parts.flatMap(({ before, value }) =>
    before ? [{ ...value, id: before.id, version: before.version }] : [],
  );
  const written = await tx.$executeRaw`
    UPDATE parts p SET maker = n.maker, description = n.description, class = n.class, issue_unit = n."issueUnit",
      pack_size = n."packSize", certificate_required = n."certificateRequired", serialised = n.serialised,
      shelf_life_months = n."shelfLifeMonths", minimum_days_at_build = n."minimumDaysAtBuild",
      lead_time_days = n."leadTimeDays", unit_price = n."unitPrice", supplier_id = n."supplierId", home_bin = n."homeBin",
      version = p.version + 1
    FROM jsonb_to_recordset(${JSON.stringify(changed)}::jsonb) AS n(id uuid, version int, maker text, description text, class text,
      "issueUnit" text, "packSize" int, "certificateRequired" boolean, serialised boolean, "shelfLifeMonths" int,
      "minimumDaysAtBuild" int, "leadTimeDays" int, "unitPrice" text, "supplierId" uuid, "homeBin" text)
    WHERE p.id = n.id AND p.version = n.version`;
  if (written !== changed.length)
    throw new Problem('out-of-date', 'A part of this table was changed in this moment; look at the preview again');
  return [
    ...added.map(({ id }) => ({ kind: 'part', id, after: 1 })),
    ...changed.map(({ id, version }) => ({ kind: 'part', id, before: version, after: version + 1 })),
  ];
}
