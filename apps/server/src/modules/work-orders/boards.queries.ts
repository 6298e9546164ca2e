import type { Input, Reply } from '@hubwright/contracts/operation';
import type { workOrderOperations } from '@hubwright/contracts/work-orders/operations';
import { consentTitles, type Stage, stageTitles } from '@hubwright/contracts/work-orders/states';
import { daysBetween } from '@hubwright/rules/dates';
import { Inject, Injectable } from '@nestjs/common';
import { CLOCK, type Clock } from '../../platform/command/clock.ts';
import { ShopZone } from '../../platform/command/shop-zone.ts';
import { Reads } from '../../platform/database/reads.ts';
import { type QuoteOut, quotesOutSql, unquotedFindingsSql } from './desk-sql.ts';
import { daysFrom, type ListRow, rowColumns, rowTables, unitOf, workOrderRowOf } from './list-row.ts';

type Desk = Reply<typeof workOrderOperations.deskBoard>;
type Manager = Reply<typeof workOrderOperations.managerBoard>;

/** More than the shop can have in the house at once. */
const mostInHouse = 500;
/** A promise this near with the work not yet at final inspection is at risk; common practice, no source. */
const riskDays = 3;

const openSql = `SELECT ${rowColumns} FROM ${rowTables}
  WHERE w.closed_at IS NULL AND w.shipped_at IS NULL ORDER BY w.priority, w.received_on, w.id LIMIT ${mostInHouse + 1}`;

// Turnaround counts calendar days from receipt to shipping, in the shop's zone, of units that were worked on.
const turnaroundSql = `
  SELECT to_char(shipped_on, 'YYYY-MM') AS month, scope, count(*)::int AS units,
    round(percentile_cont(0.5) WITHIN GROUP (ORDER BY shipped_on - received_on))::int AS "medianDays",
    max(shipped_on - received_on)::int AS "longestDays",
    count(*) FILTER (WHERE shipped_on <= promised_on)::int AS kept, count(promised_on)::int AS promised
  FROM (SELECT scope, received_on, promised_on, (shipped_at AT TIME ZONE $2)::date AS shipped_on
    FROM work_orders WHERE shipped_at IS NOT NULL AND consent = 'approved') shipped
  WHERE shipped_on >= (date_trunc('month', $3::date) - make_interval(months => $1 - 1))::date
  GROUP BY 1, 2 ORDER BY 1, 2`;

@Injectable()
export class BoardsQueries {
  constructor(
    @Inject(Reads) private readonly reads: Reads,
    @Inject(CLOCK) private readonly clock: Clock,
    @Inject(ShopZone) private readonly zone: ShopZone,
  ) {}

  /** Three statements: units in the house, offers out, findings nobody quoted. */
  async desk(): Promise<Desk> {
    const now = this.clock.now();
    const today = await this.zone.today(now);
    const [open, out, unquoted] = await Promise.all([
      this.reads.sql<ListRow>(openSql),
      this.reads.sql<QuoteOut>(quotesOutSql),
      this.reads.sql<{ id: string; findings: number }>(unquotedFindingsSql),
    ]);
    const offers = out.map((quote) => offerOf(quote, { now, today }));
    const entry = (row: ListRow, note: string) => deskUnit(row, now, note);
    return {
      notLookedAt: open.filter((row) => row.stage === 'received' && !row.looked_at).map((row) => entry(row, row.scope)),
      toWrite: [
        ...open.flatMap((row) =>
          row.consent === 'estimate-due' ? [{ ...entry(row, 'Estimate'), kind: 'estimate' as const }] : [],
        ),
        ...open.flatMap((row) =>
          row.consent === 'quote-due' ? [{ ...entry(row, 'Quote'), kind: 'firm' as const }] : [],
        ),
        ...open.flatMap((row) => {
          const waiting = unquoted.find(({ id }) => id === row.id);
          return waiting
            ? [
                {
                  ...entry(row, waiting.findings === 1 ? 'One finding' : `${waiting.findings} findings`),
                  kind: 'over-and-above' as const,
                },
              ]
            : [];
        }),
      ],
      quotesOut: offers.filter((offer) => offer.kind !== 'over-and-above'),
      overAndAboveWaiting: offers.filter((offer) => offer.kind === 'over-and-above'),
      overdueAnswers: offers.filter((offer) => offer.nextChaser?.overdue || offer.silent),
      promisesAtRisk: open.flatMap((row) => promiseAtRisk(row, { now, today })),
      toShip: open
        .filter((row) => row.stage === 'released' || row.stage === 'returning-unrepaired')
        .map((row) => entry(row, stageTitles[row.stage])),
    };
  }

  async manager(input: Input<typeof workOrderOperations.managerBoard>): Promise<Manager> {
    const now = this.clock.now();
    const [today, zone] = [await this.zone.today(now), await this.zone.zone()];
    const [open, turnaround] = await Promise.all([
      this.reads.sql<ListRow>(openSql),
      this.reads.sql<Manager['turnaround'][number]>(turnaroundSql, [input.months, zone, today]),
    ]);
    return {
      units: open.slice(0, mostInHouse).map((row) => inHouse(row, { now, today })),
      more: open.length > mostInHouse,
      turnaround,
    };
  }
}

interface Today {
  readonly now: Date;
  readonly today: string;
}

function deskUnit(row: ListRow, now: Date, note: string) {
  return {
    workOrder: { id: row.id, number: row.number },
    unit: unitOf(row),
    customer: row.customer_name,
    since: row.stage_since.toISOString(),
    days: daysFrom(row.stage_since, now),
    note,
  };
}

const nearlyDone: readonly Stage[] = ['final-inspection', 'released', 'returning-unrepaired', 'scrapped'];

function promiseAtRisk(row: ListRow, { now, today }: Today): Desk['promisesAtRisk'] {
  if (!row.promised_on) return [];
  const daysLeft = daysBetween(today, row.promised_on);
  if (daysLeft > riskDays || (nearlyDone.includes(row.stage) && daysLeft >= 0)) return [];
  return [{ ...deskUnit(row, now, stageTitles[row.stage]), promisedOn: row.promised_on, daysLeft }];
}

function offerOf(quote: QuoteOut, { now, today }: Today) {
  const next = quote.next_chaser;
  return {
    ...{ id: quote.id, number: quote.number, kind: quote.kind, currency: quote.currency, customer: quote.customer },
    workOrder: { id: quote.work_order_id, number: quote.work_order_number },
    totalMinor: quote.total_minor,
    sentAt: quote.sent_at.toISOString(),
    days: daysFrom(quote.sent_at, now),
    validUntil: quote.valid_until,
    nextChaser: next && { ...next, overdue: next.dueOn <= today },
    // Every chaser was sent and the last one's day has come, or silence is on record already.
    silent: quote.state === 'silent' || (next === null && quote.last_due !== null && quote.last_due <= today),
  };
}

function inHouse(row: ListRow, { now, today }: Today): Manager['units'][number] {
  const shown = workOrderRowOf(row, now);
  const { scope, stage, consent, promisedOn, ball } = shown;
  const held = row.holds.map((hold) => hold.reason);
  return {
    workOrder: { id: row.id, number: row.number },
    unit: shown.unit,
    customer: row.customer_name,
    ...{ scope, stage, consent, promisedOn, ball },
    since: shown.stageSince,
    daysInStage: shown.daysInStage,
    daysInHouse: daysBetween(row.received_on, today),
    late: promisedOn !== null && promisedOn < today,
    heldBy: held.length > 0 ? held : [waitsFor(row)],
  };
}

function waitsFor(row: ListRow): string {
  if (row.stage === 'received' && !row.looked_at) return 'Preliminary inspection';
  return row.consent === 'approved' || row.consent === 'declined' || row.consent === 'evaluation-approved'
    ? stageTitles[row.stage]
    : consentTitles[row.consent];
}
