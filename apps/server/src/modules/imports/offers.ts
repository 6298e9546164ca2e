import { Problem } from '@hubwright/contracts/problems';
import type { Subject } from '../../platform/command/command.ts';
import type { KnownPart } from './parts.ts';
import type { Ask, Writing } from './table.ts';

/** How a supplier sells a part. */
export interface OfferTerms {
  readonly supplierPartNumber: string;
  readonly packSize: number;
  readonly minimum: number;
  readonly leadTimeDays: number;
  readonly preference: number;
  readonly validFrom: string | null;
  readonly validUntil: string | null;
  readonly breaks: readonly { readonly from: number; readonly unitPrice: string }[];
}
/** An offer of a supplier and a part as it will be: on record already, or new (`id` undefined). */
export interface DraftOffer {
  readonly id: string | undefined;
  readonly version: number;
  readonly partId: string;
  readonly supplierId: string;
  terms: OfferTerms;
  isChanged: boolean;
}

const offersSql = `
  SELECT id, part_id AS "partId", supplier_id AS "supplierId", supplier_part_number AS "supplierPartNumber", pack_size AS "packSize",
    minimum, lead_time_days AS "leadTimeDays", preference, valid_from::text AS "validFrom", valid_until::text AS "validUntil", breaks, version
  FROM part_offers WHERE part_id = ANY($1::uuid[])`;

/** Offers of the parts a table names, by `supplier part`, and the last number in the order of asking by part: one statement. */
export async function knownOffers(
  ask: Ask,
  { parts, suppliers }: { parts: ReadonlyMap<string, KnownPart>; suppliers: ReadonlyMap<string, string> },
) {
  const named = [...parts.values()].map(({ id }) => id);
  const rows = await ask<OfferTerms & Pick<DraftOffer, 'version' | 'partId' | 'supplierId'> & { id: string }>(
    offersSql,
    [named],
  );
  const wanted = new Set(suppliers.values());
  const asked = new Map<string, number>();
  const offers = new Map<string, DraftOffer[]>();
  for (const { id, version, partId, supplierId, ...terms } of rows) {
    asked.set(partId, Math.max(asked.get(partId) ?? 0, terms.preference));
    if (!wanted.has(supplierId)) continue;
    const key = `${supplierId} ${partId}`;
    offers.set(key, [...(offers.get(key) ?? []), { id, version, partId, supplierId, terms, isChanged: false }]);
  }
  return { offers, asked };
}

/** One statement, however many. Throws `out-of-date` when one was changed by someone else in the same moment. */
export async function writeOffers({ tx, newId }: Writing, offers: readonly DraftOffer[]): Promise<readonly Subject[]> {
  const rows = offers.map(({ id, version, partId, supplierId, terms }) => ({
    ...{ id: id ?? newId(), partId, supplierId, seen: version },
    ...terms,
  }));
  const written = await tx.$executeRaw`
    INSERT INTO part_offers AS f (id, part_id, supplier_id, preference, pack_size, minimum, lead_time_days, breaks,
      supplier_part_number, valid_from, valid_until, version)
    SELECT id, "partId", "supplierId", preference, "packSize", minimum, "leadTimeDays", breaks,
      "supplierPartNumber", "validFrom", "validUntil", seen + 1
    FROM jsonb_to_recordset(${JSON.stringify(rows)}::jsonb) AS n(id uuid, "partId" uuid, "supplierId" uuid, preference int,
      "packSize" int, minimum int, "leadTimeDays" int, breaks jsonb, "supplierPartNumber" text, "validFrom" date,
      "validUntil" date, seen int)
    ON CONFLICT (id) DO UPDATE SET preference = excluded.preference, pack_size = excluded.pack_size,
      minimum = excluded.minimum, lead_time_days = excluded.lead_time_days, breaks = excluded.breaks,
      supplier_part_number = excluded.supplier_part_number, valid_from = excluded.valid_from,
      valid_until = excluded.valid_until, version = excluded.version
    WHERE f.version = excluded.version - 1`;
  if (written !== rows.length)
    throw new Problem('out-of-date', 'An offer of this table was changed in this moment; look at the preview again');
  const ids = (kind: string, key: 'partId' | 'supplierId') =>
    [...new Set(offers.map((offer) => offer[key]))].map((id) => ({ kind, id }));
  return [...ids('part', 'partId'), ...ids('supplier', 'supplierId')];
}
