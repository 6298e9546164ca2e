import type { partOperations } from '@hubwright/contracts/inventory/part-operations';
import { storagePlaces } from '@hubwright/contracts/inventory/shapes';
import type { Input, Reply } from '@hubwright/contracts/operation';
import { Inject, Injectable } from '@nestjs/common';
import { Reads } from '../../platform/database/reads.ts';
import { placeTitle } from './place-title.ts';

type PlaceRow = Reply<typeof partOperations.listPlaces>['rows'][number];
type LotThere = Reply<typeof partOperations.listLotsAt>['rows'][number];

// Places without a walk come after those with one.
const lastOfWalk = 2_147_483_647;

const placesSql = `
  SELECT p.kind, p.ref, ${placeTitle({ kind: 'p.kind', ref: 'p.ref' })} AS title, p.label, p.walk, h.lots, h.parts
  FROM (
    SELECT 'bin' AS kind, code AS ref, title AS label, walk FROM bins
    UNION ALL
    SELECT DISTINCT place_kind, place_ref, '', NULL::int FROM balances
    WHERE on_hand > 0 AND place_kind <> 'bin' AND place_kind = ANY($1::text[])) p
  CROSS JOIN LATERAL (
    SELECT count(*)::int AS lots, count(DISTINCT l.part_id)::int AS parts FROM balances b JOIN lots l ON l.id = b.lot_id
    WHERE b.place_kind = p.kind AND b.place_ref = p.ref AND b.on_hand > 0) h
  WHERE $2::int IS NULL OR (coalesce(p.walk, ${lastOfWalk}), p.kind, p.ref) > ($2, $3::text, $4::text)
  ORDER BY coalesce(p.walk, ${lastOfWalk}), p.kind, p.ref LIMIT $5`;

const lotsAtSql = `
  SELECT l.id, l.code, p.id AS part_id, p.number, p.description, p.issue_unit, l.state, b.on_hand, l.expires_on::text, c.name AS owner
  FROM balances b JOIN lots l ON l.id = b.lot_id JOIN parts p ON p.id = l.part_id LEFT JOIN customers c ON c.id = l.owner_id
  WHERE b.place_kind = $1 AND b.place_ref = $2 AND b.on_hand > 0 AND ($3::text IS NULL OR (p.number, l.code) > ($3, $4::text))
  ORDER BY p.number, l.code LIMIT $5`;

interface LotThereRow {
  id: string;
  code: string;
  part_id: string;
  number: string;
  description: string;
  issue_unit: string;
  state: LotThere['state'];
  on_hand: number;
  expires_on: string | null;
  owner: string | null;
}

/** What lies where, as the ledger has it. */
@Injectable()
export class PlacesQueries {
  constructor(@Inject(Reads) private readonly reads: Reads) {}

  async list(input: Input<typeof partOperations.listPlaces>): Promise<Reply<typeof partOperations.listPlaces>> {
    const [walk, kind, ref] = input.after?.split('~') ?? [];
    const after = walk === undefined || !/^\d{1,10}$/.test(walk) ? null : Number(walk);
    const rows = await this.reads.sql<PlaceRow>(placesSql, [
      storagePlaces,
      after,
      kind ?? null,
      ref ?? null,
      input.limit + 1,
    ]);
    const shown = rows.slice(0, input.limit);
    const last = shown.at(-1);
    const next = rows.length > input.limit && last ? `${last.walk ?? lastOfWalk}~${last.kind}~${last.ref}` : null;
    return { rows: shown, next };
  }

  async lotsAt(input: Input<typeof partOperations.listLotsAt>): Promise<Reply<typeof partOperations.listLotsAt>> {
    const [number, code] = input.after?.split('~') ?? [];
    const rows = await this.reads.sql<LotThereRow>(lotsAtSql, [
      input.kind,
      input.ref,
      number ?? null,
      code ?? null,
      input.limit + 1,
    ]);
    const shown = rows.slice(0, input.limit);
    const last = shown.at(-1);
    return {
      rows: shown.map(({ part_id, number, description, issue_unit, on_hand, expires_on, ...lot }) => ({
        ...lot,
        part: { id: part_id, number, description, issueUnit: issue_unit },
        onHand: on_hand,
        expiresOn: expires_on,
      })),
      next: rows.length > input.limit && last ? `${last.number}~${last.code}` : null,
    };
  }
}
