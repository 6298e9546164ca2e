import type { fieldBalanceOperations } from '@hubwright/contracts/field-balance/operations';
import type { FieldBalanceSpec } from '@hubwright/contracts/field-balance/shapes';
import type { Reply } from '@hubwright/contracts/operation';
import type { Piece } from '@hubwright/rules/balance';
import { Inject, Injectable } from '@nestjs/common';
import { Reads } from '../../platform/database/reads.ts';
import { dataOf } from './field-balance.ts';

type Hardware = Reply<typeof fieldBalanceOperations.listBalanceHardware>;

interface HardwareRow {
  part_id: string;
  number: string;
  description: string;
  mass: string;
  entered_by: string;
  display_name: string;
  initials: string;
  lots: { code: string; onHand: number; free: number; sourceClass: string }[];
}

// Lots that may be drawn on: accepted, the shop's own, with pieces in bins.
const hardwareSql = `
  SELECT h.part_id, p.number, p.description, h.mass, h.entered_by, w.display_name, w.initials, l.lots
  FROM (SELECT DISTINCT ON (part_id) * FROM balance_hardware ORDER BY part_id, entered_at DESC, id DESC) h
  JOIN parts p ON p.id = h.part_id JOIN people w ON w.id = h.entered_by
  CROSS JOIN LATERAL (
    SELECT coalesce(json_agg(json_build_object('code', t.code, 'onHand', t.on_hand, 'sourceClass', t.source_class,
      'free', greatest(0, t.on_hand - t.promised)) ORDER BY t.code), '[]') AS lots
    FROM (SELECT x.code, x.source_class, coalesce(sum(b.on_hand), 0)::int AS on_hand,
        coalesce((SELECT sum(r.quantity)::int FROM reservations r WHERE r.lot_id = x.id), 0) AS promised
      FROM lots x JOIN balances b ON b.lot_id = x.id AND b.place_kind = 'bin' AND b.on_hand > 0
      WHERE x.part_id = h.part_id AND x.state = 'accepted' AND x.owner_id IS NULL AND x.origin <> 'taken-off'
      GROUP BY x.id) t) l
  ORDER BY p.number LIMIT 200`;

/** What the balance of a model is limited by, and what it may be done with. */
@Injectable()
export class HardwareQueries {
  constructor(@Inject(Reads) private readonly reads: Reads) {}

  async hardware(): Promise<Hardware> {
    const rows = await this.reads.sql<HardwareRow>(hardwareSql);
    return {
      rows: rows.map((row) => ({
        part: { id: row.part_id, number: row.number, description: row.description },
        mass: row.mass,
        enteredBy: { id: row.entered_by, displayName: row.display_name, initials: row.initials },
        lots: row.lots.map(({ code, onHand }) => ({ code, onHand })),
      })),
    };
  }

  /** Pieces that may be fitted for a customer, by part. */
  async pieces(acceptedSources: readonly string[]): Promise<Piece[]> {
    const rows = await this.reads.sql<HardwareRow>(hardwareSql);
    return rows.map(({ number, mass, lots }) => ({
      ...{ part: number, mass: Number(mass) },
      onHand: lots.reduce((sum, lot) => sum + (acceptedSources.includes(lot.sourceClass) ? lot.free : 0), 0),
    }));
  }

  /** The newest data of every model that has some. */
  async data(): Promise<{ rows: FieldBalanceSpec[] }> {
    const newest = await this.reads.sql<{ id: string }>(
      'SELECT DISTINCT ON (model_id) id FROM field_balance_specs ORDER BY model_id, entered_at DESC, id DESC LIMIT 500',
    );
    return { rows: await this.specs(newest.map(({ id }) => id)) };
  }

  async newestOf(modelId: string): Promise<FieldBalanceSpec | undefined> {
    const spec = await this.reads.models.fieldBalanceSpec.findFirst({
      where: { modelId },
      orderBy: [{ enteredAt: 'desc' }, { id: 'desc' }],
      select: { id: true },
    });
    return spec ? (await this.specs([spec.id]))[0] : undefined;
  }

  async specs(ids: readonly string[]): Promise<FieldBalanceSpec[]> {
    const rows = await this.reads.models.fieldBalanceSpec.findMany({
      where: { id: { in: [...ids] } },
      include: { model: true },
      orderBy: { model: { designation: 'asc' } },
    });
    const people = await this.people(rows.map(({ enteredBy }) => enteredBy));
    return rows.map((row) => ({
      ...dataOf(row),
      ...{ id: row.id, enteredBy: people(row.enteredBy), enteredAt: row.enteredAt.toISOString() },
      model: { id: row.modelId, designation: row.model.designation, bladeCount: row.model.bladeCount ?? 0 },
    }));
  }

  async people(ids: readonly string[]) {
    const rows = await this.reads.models.person.findMany({
      where: { id: { in: [...new Set(ids)] } },
      select: { id: true, displayName: true, initials: true },
    });
    return (id: string) => rows.find((one) => one.id === id) ?? { id, displayName: 'Unknown person', initials: '?' };
  }
}
