import type { Input, Reply } from '@hubwright/contracts/operation';
import { type offerOperations, usualBuyingCosts } from '@hubwright/contracts/purchasing/offer-operations';
import { Inject, Injectable } from '@nestjs/common';
import { CLOCK, type Clock } from '../../platform/command/clock.ts';
import { ShopZone } from '../../platform/command/shop-zone.ts';
import { Reads } from '../../platform/database/reads.ts';

type Offer = Reply<typeof offerOperations.listOffers>['rows'][number];

const offersSql = `
  SELECT f.id, f.preference, f.pack_size AS "packSize", f.minimum, f.lead_time_days AS "leadTimeDays", f.breaks, f.version,
    f.supplier_part_number AS "supplierPartNumber", f.valid_from::text AS "validFrom", f.valid_until::text AS "validUntil",
    coalesce(f.valid_from <= $7::date, true) AND coalesce(f.valid_until >= $7::date, true) AS holds,
    json_build_object('id', p.id, 'number', p.number, 'description', p.description, 'issueUnit', p.issue_unit) AS part,
    json_build_object('id', s.id, 'code', s.code, 'name', s.name) AS supplier,
    concat_ws('~', p.number, f.preference, f.id) AS place
  FROM part_offers f JOIN parts p ON p.id = f.part_id JOIN suppliers s ON s.id = f.supplier_id
  WHERE ($1::uuid IS NULL OR f.part_id = $1) AND ($2::uuid IS NULL OR f.supplier_id = $2)
    AND ($3::text IS NULL OR (p.number, f.preference, f.id) > ($3, $4::int, $5::uuid))
  ORDER BY p.number, f.preference, f.id LIMIT $6`;

@Injectable()
export class OfferQueries {
  constructor(
    @Inject(Reads) private readonly reads: Reads,
    @Inject(CLOCK) private readonly clock: Clock,
    @Inject(ShopZone) private readonly zone: ShopZone,
  ) {}

  async list(input: Input<typeof offerOperations.listOffers>): Promise<Reply<typeof offerOperations.listOffers>> {
    const today = await this.zone.today(this.clock.now());
    const [number, preference, id] = placeOf(input.after);
    const rows = await this.reads.sql<Offer & { place: string }>(offersSql, [
      ...[input.partId ?? null, input.supplierId ?? null],
      ...[number ?? null, preference ?? null, id ?? null, input.limit + 1, today],
    ]);
    const shown = rows.slice(0, input.limit);
    const next = rows.length > input.limit ? (shown.at(-1)?.place ?? null) : null;
    return { rows: shown.map(({ place: _, ...row }) => row), next };
  }

  async costs(): Promise<Reply<typeof offerOperations.buyingCosts>> {
    const row = await this.reads.models.buyingCost.findUnique({ where: { id: 1 } });
    if (!row) return { ...usualBuyingCosts, version: 0 };
    const { id: _, ...costs } = row;
    return costs;
  }
}

/** A part number may itself hold the mark between the pieces, so they are taken from the end. Anything else begins anew. */
function placeOf(after: string | undefined): readonly (string | number | undefined)[] {
  const found = /^(.*)~(\d)~([0-9a-f-]{36})$/.exec(after ?? '');
  return found ? [found[1], Number(found[2]), found[3]] : [];
}
