import type { EquipmentKind } from '@hubwright/contracts/manuals/words';
import type { Input, Reply } from '@hubwright/contracts/operation';
import type { Process } from '@hubwright/contracts/people/operations';
import type { equipmentOperations as op } from '@hubwright/contracts/processes/equipment-operations';
import { Inject, Injectable } from '@nestjs/common';
import { CLOCK, type Clock } from '../../platform/command/clock.ts';
import { ShopZone } from '../../platform/command/shop-zone.ts';
import { found } from '../../platform/command/version.ts';
import { Reads } from '../../platform/database/reads.ts';
import {
  checksOf,
  type NewestReading,
  newestReadingsSql,
  type Stood,
  shutBy,
  standingAt,
} from './equipment-fitness.ts';

type Row = Reply<typeof op.listEquipment>['rows'][number];
type Log = Reply<typeof op.equipmentLog>;
type Doubt = Reply<typeof op.listDoubts>['rows'][number];
type FoundDoubt = Omit<Doubt, 'foundAt' | 'performedAt' | 'workOrder'> & {
  readonly foundAt: Date;
  readonly performedAt: Date;
  readonly releasedAt: Date | null;
  readonly workOrder: { id: string; number: string };
};

/** As many readings as a chart and a list show. */
const newestReadings = 400;

@Injectable()
export class EquipmentQueries {
  constructor(
    @Inject(Reads) private readonly reads: Reads,
    @Inject(CLOCK) private readonly clock: Clock,
    @Inject(ShopZone) private readonly zone: ShopZone,
  ) {}

  async list({ kind, after, limit }: Input<typeof op.listEquipment>): Promise<Reply<typeof op.listEquipment>> {
    const rows = await this.reads.models.equipment.findMany({
      where: { ...(kind ? { kind } : {}), ...(after ? { code: { gt: after } } : {}) },
      orderBy: { code: 'asc' },
      take: limit + 1,
    });
    const shown = rows.slice(0, limit);
    const ids = shown.map(({ id }) => id);
    const at = this.clock.now();
    const [newest, doubts, day] = await Promise.all([
      this.reads.sql<NewestReading>(newestReadingsSql, [ids, at]),
      this.reads.models.equipmentDoubt.groupBy({
        by: ['equipmentId'],
        where: { equipmentId: { in: ids }, decision: null },
        _count: true,
      }),
      this.zone.today(at),
    ]);
    return {
      rows: shown.map((row) => {
        const standings = standingAt(row, newest, { at, day });
        return {
          ...row,
          ...{ kind: row.kind as EquipmentKind, process: row.process as Process, checks: [...checksOf(row)] },
          standings: standings.map(shownStanding),
          shut: shutBy(row, standings)?.detail ?? null,
          openDoubts: doubts.find(({ equipmentId }) => equipmentId === row.id)?._count ?? 0,
        };
      }),
      next: rows.length > limit ? (shown.at(-1)?.code ?? null) : null,
    };
  }

  async log(equipmentId: string): Promise<Log> {
    found(await this.reads.models.equipment.findUnique({ where: { id: equipmentId } }), 'This equipment');
    const [readings, additions] = await Promise.all([
      this.reads.sql<Omit<Log['readings'][number], 'takenAt'> & { takenAt: Date }>(readingsSql, [
        equipmentId,
        newestReadings,
      ]),
      this.reads.sql<Omit<Log['additions'][number], 'addedAt'> & { addedAt: Date }>(additionsSql, [equipmentId]),
    ]);
    return {
      readings: readings.map((row) => ({ ...row, takenAt: row.takenAt.toISOString() })),
      additions: additions.map((row) => ({ ...row, addedAt: row.addedAt.toISOString() })),
    };
  }

  async doubts(input: Input<typeof op.listDoubts>): Promise<Reply<typeof op.listDoubts>> {
    const { workOrderId = null, show, after = null, limit } = input;
    const rows = await this.reads.sql<FoundDoubt>(doubtsSql, [workOrderId, show, after, limit + 1]);
    const shown = rows.slice(0, limit);
    return {
      rows: shown.map(({ releasedAt, ...row }) => ({
        ...row,
        workOrder: { ...row.workOrder, releasedAt: releasedAt?.toISOString() ?? null },
        foundAt: row.foundAt.toISOString(),
        performedAt: row.performedAt.toISOString(),
      })),
      next: rows.length > limit ? (shown.at(-1)?.id ?? null) : null,
    };
  }
}

function shownStanding({ name, state, value, reading, until, lastDay }: Stood): Row['standings'][number] {
  const instant = (at: number | undefined) => (at === undefined ? null : new Date(at).toISOString());
  return {
    ...{ name, state, value: value ?? null, takenAt: instant(reading?.at) },
    ...{ until: instant(until), lastDay: lastDay ?? null },
  };
}

const readingsSql = `
  SELECT r.id::text, r.quantity, r.value, r.unit, r.low, r.high, r.good, r.taken_at AS "takenAt", p.display_name AS person, r.late_reason AS "lateReason"
  FROM equipment_readings r JOIN people p ON p.id = r.person_id WHERE r.equipment_id = $1 ORDER BY r.taken_at DESC, r.id DESC LIMIT $2`;
const additionsSql = `
  SELECT a.id::text, a.what, a.amount, a.unit, a.added_at AS "addedAt", p.display_name AS person
  FROM equipment_additions a JOIN people p ON p.id = a.person_id WHERE a.equipment_id = $1 ORDER BY a.added_at DESC, a.id DESC LIMIT 50`;
/** $1 work order, $2 open or all, $3 the last id seen, $4 most rows. Ids are made in time's order. */
const doubtsSql = `
  SELECT d.id::text, json_build_object('id', e.id, 'code', e.code, 'title', e.title) AS equipment, r.quantity, trim(r.value || ' ' || r.unit) AS value,
    r.taken_at AS "foundAt", json_build_object('id', w.id, 'number', w.number) AS "workOrder", w.released_at AS "releasedAt", k.name AS customer,
    json_build_object('id', t.id, 'number', t.number, 'position', t.position) AS traveler, s.title AS step, p.display_name AS person,
    o.performed_at AS "performedAt", d.decision, d.reason, b.display_name AS "decidedBy", d.version
  FROM equipment_doubts d JOIN equipment e ON e.id = d.equipment_id JOIN equipment_readings r ON r.id = d.reading_id
  JOIN sign_offs o ON o.id = d.sign_off_id JOIN people p ON p.id = o.person_id JOIN work_orders w ON w.id = d.work_order_id
  JOIN customers k ON k.id = w.customer_id JOIN traveler_steps s ON s.id = o.step_id JOIN travelers t ON t.id = s.traveler_id
  LEFT JOIN people b ON b.id = d.decided_by
  WHERE ($1::uuid IS NULL OR d.work_order_id = $1) AND ($2 = 'all' OR d.decision IS NULL) AND ($3::text IS NULL OR d.id::text > $3)
  ORDER BY d.id LIMIT $4`;
