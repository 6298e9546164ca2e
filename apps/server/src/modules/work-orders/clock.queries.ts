import type { Input, Reply } from '@hubwright/contracts/operation';
import {
  type ClockKind,
  clockKinds,
  type clockOperations,
  mostHours,
} from '@hubwright/contracts/work-orders/clock-operations';
import { isForgotten, minutesOf } from '@hubwright/rules/clock';
import { Inject, Injectable } from '@nestjs/common';
import { CLOCK, type Clock } from '../../platform/command/clock.ts';
import { Reads } from '../../platform/database/reads.ts';

type Row = Reply<typeof clockOperations.listTimes>['rows'][number];

interface Found {
  readonly id: string;
  readonly person_id: string;
  readonly display_name: string;
  readonly kind: string;
  readonly note: string;
  readonly step: Row['step'];
  readonly load: string | null;
  readonly started_at: Date;
  readonly ended_at: Date | null;
  readonly late_reason: string | null;
  readonly entered_by: string | null;
  readonly supersedes_id: string | null;
  readonly version: number;
}

const select = `
  SELECT e.id::text, e.person_id::text, p.display_name, e.kind, e.note, e.started_at, e.ended_at, e.late_reason, e.version,
    e.supersedes_id::text, CASE WHEN e.entered_by <> e.person_id THEN b.display_name END AS entered_by, l.number AS load,
    CASE WHEN s.id IS NOT NULL THEN json_build_object('id', s.id, 'title', s.title, 'travelerId', t.id, 'traveler', t.number,
      'workOrderId', w.id, 'workOrder', w.number) END AS step
  FROM clock_entries e JOIN people p ON p.id = e.person_id JOIN people b ON b.id = e.entered_by
  LEFT JOIN traveler_steps s ON s.id = e.step_id LEFT JOIN travelers t ON t.id = s.traveler_id
  LEFT JOIN work_orders w ON w.id = t.work_order_id LEFT JOIN loads l ON l.id = e.load_id`;

/** The beginning of today in the shop, or of a given day. */
const dayOf = (date: string) => `(${date}::date)::timestamp AT TIME ZONE (SELECT zone FROM shop_profile)`;
const today = `(now() AT TIME ZONE (SELECT zone FROM shop_profile))::date`;

@Injectable()
export class ClockQueries {
  constructor(
    @Inject(Reads) private readonly reads: Reads,
    @Inject(CLOCK) private readonly clock: Clock,
  ) {}

  async mine(personId: string): Promise<Reply<typeof clockOperations.myClock>> {
    const found = await this.reads.sql<Found>(
      `${select} WHERE e.person_id = $1 AND e.stands AND (e.ended_at IS NULL OR e.started_at >= ${dayOf(today)})
       ORDER BY e.started_at LIMIT 200`,
      [personId],
    );
    const rows = found.map((row) => this.row(row));
    const running = rows.find(({ endedAt }) => endedAt === null) ?? null;
    const ended = rows.filter(({ endedAt }) => endedAt !== null);
    return {
      running: running?.forgotten ? null : running,
      today: ended,
      minutes: clockKinds.map((kind) => ({ kind, minutes: sum(ended.filter((row) => row.kind === kind)) })),
      forgotten: rows.filter(({ forgotten }) => forgotten),
    };
  }

  async list(input: Input<typeof clockOperations.listTimes>): Promise<Reply<typeof clockOperations.listTimes>> {
    const { personId = null, workOrderId = null, from = null, forgotten, after = null, limit } = input;
    const longest = new Date(this.clock.now().getTime() - mostHours * 3_600_000);
    const found = await this.reads.sql<Found & { place: string }>(
      `SELECT r.*, to_char(r.started_at, 'YYYY-MM-DD"T"HH24:MI:SS.MS') || ' ' || r.id AS place FROM (${select}
         WHERE e.stands AND ($1::uuid IS NULL OR e.person_id = $1) AND ($2::uuid IS NULL OR e.work_order_id = $2)
           AND ($3::text IS NULL OR e.started_at >= ${dayOf('$3')})
           AND ($4 = 'no' OR (e.ended_at IS NULL AND e.started_at < $5))) r
       WHERE $6::text IS NULL OR to_char(r.started_at, 'YYYY-MM-DD"T"HH24:MI:SS.MS') || ' ' || r.id < $6
       ORDER BY r.started_at DESC, r.id DESC LIMIT $7`,
      [personId, workOrderId, from, forgotten, longest, after, limit + 1],
    );
    const shown = found.slice(0, limit);
    return {
      rows: shown.map((row) => this.row(row)),
      next: found.length > limit ? (shown.at(-1)?.place ?? null) : null,
    };
  }

  /** Time of a load counts for each of its steps in equal parts. */
  async real(input: Input<typeof clockOperations.realTimes>): Promise<Reply<typeof clockOperations.realTimes>> {
    const { from = null, workOrderId = null } = input;
    const rows = await this.reads.sql<Reply<typeof clockOperations.realTimes>['rows'][number]>(
      `WITH shared AS (
         SELECT e.kind, coalesce(lp.step_id, e.step_id) AS step_id,
           extract(epoch FROM e.ended_at - e.started_at) / 60
             / greatest((SELECT count(*) FROM load_parts n WHERE n.load_id = e.load_id AND n.out IS NULL), 1) AS minutes
         FROM clock_entries e LEFT JOIN load_parts lp ON lp.load_id = e.load_id AND lp.out IS NULL
         WHERE e.stands AND e.ended_at IS NOT NULL AND e.step_id IS NOT NULL AND ($1::text IS NULL OR e.started_at >= ${dayOf('$1')})
       ), by_step AS (
         SELECT step_id, sum(minutes) AS minutes, coalesce(sum(minutes) FILTER (WHERE kind = 'redo'), 0) AS redo FROM shared GROUP BY step_id
       )
       SELECT s.process, count(*)::int AS steps, sum(s.standard_minutes)::int AS "standardMinutes",
         round(sum(b.minutes))::int AS "realMinutes", round(sum(b.redo))::int AS "redoMinutes"
       FROM by_step b JOIN traveler_steps s ON s.id = b.step_id JOIN travelers t ON t.id = s.traveler_id
       WHERE s.state IN ('signed', 'failed') AND ($2::uuid IS NULL OR t.work_order_id = $2)
       GROUP BY s.process ORDER BY s.process`,
      [from, workOrderId],
    );
    return { rows };
  }

  private row(found: Found): Row {
    const { started_at: from, ended_at: to } = found;
    return {
      id: found.id,
      person: { id: found.person_id, displayName: found.display_name },
      kind: found.kind as ClockKind,
      ...{ step: found.step, load: found.load, note: found.note, version: found.version },
      startedAt: from.toISOString(),
      endedAt: to?.toISOString() ?? null,
      minutes: to ? minutesOf({ from: from.getTime(), to: to.getTime() }) : null,
      forgotten: to === null && isForgotten({ from: from.getTime(), now: this.clock.now().getTime(), mostHours }),
      lateReason: found.late_reason,
      enteredBy: found.entered_by,
      mended: found.supersedes_id !== null,
    };
  }
}

function sum(rows: readonly Row[]): number {
  return rows.reduce((total, { minutes }) => total + (minutes ?? 0), 0);
}
