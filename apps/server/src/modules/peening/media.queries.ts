import type { Input, Reply } from '@hubwright/contracts/operation';
import type { mediaOperations } from '@hubwright/contracts/peening/media-operations';
import { Inject, Injectable } from '@nestjs/common';
import { CLOCK, type Clock } from '../../platform/command/clock.ts';
import { ShopZone } from '../../platform/command/shop-zone.ts';
import { Reads } from '../../platform/database/reads.ts';
import { newestChecks, standingOf } from './media.ts';
import { lastHours } from './media-hours.ts';
import { peopleNamed } from './people-named.ts';

type Media = Reply<typeof mediaOperations.listPeeningMedia>['rows'][number];
type Review = Reply<typeof mediaOperations.listMediaReviews>['rows'][number];
type FoundReview = Omit<Review, 'lot' | 'workOrder' | 'checkedAt' | 'decidedAt'> & {
  readonly lot: { id: string; number: string; state: string };
  readonly startedAt: Date;
  readonly workOrder: { id: string; number: string; stage: string };
  readonly releasedAt: Date | null;
  readonly checkedAt: Date;
  readonly decidedAt: Date | null;
};

/** As many checks of a media lot as a page shows. */
const shownChecks = 30;

@Injectable()
export class MediaQueries {
  constructor(
    @Inject(Reads) private readonly reads: Reads,
    @Inject(CLOCK) private readonly clock: Clock,
    @Inject(ShopZone) private readonly zone: ShopZone,
  ) {}

  async media({ limit, after }: Input<typeof mediaOperations.listPeeningMedia>) {
    const rows = await this.reads.models.peeningMedia.findMany({
      orderBy: [{ takenOutAt: { sort: 'desc', nulls: 'first' } }, { id: 'desc' }],
      ...(after ? { cursor: { id: after }, skip: 1 } : {}),
      take: limit + 1,
      include: { machine: true, checks: { ...newestChecks, take: shownChecks } },
    });
    const shown = rows.slice(0, limit);
    const people = await peopleNamed(
      this.reads,
      shown.flatMap(({ putInBy, checks }) => [putInBy, ...checks.map(({ checkedBy }) => checkedBy)]),
    );
    const hours = await lastHours(this.reads, [...new Set(shown.map(({ machineId }) => machineId))]);
    const at = { zone: await this.zone.zone(), today: await this.zone.today(this.clock.now()) };
    return {
      rows: shown.map((media): Media => {
        const { putInBy, putInAt, takenOutAt, checks, machine, machineId, limits, ...rest } = media;
        const { state, dueOn = null, dueAtHours = null } = standingOf(media, { ...at, hours: hours.get(machineId) });
        return {
          ...rest,
          ...{ state, dueOn, dueAtHours, limits: limits as Media['limits'], putInBy: people(putInBy) },
          machine: { id: machine.id, code: machine.code, title: machine.title },
          putInAt: putInAt.toISOString(),
          takenOutAt: takenOutAt?.toISOString() ?? null,
          checks: checks.map(({ checkedBy, checkedAt, sieves, ...check }) => ({
            ...{ ...check, sieves: sieves as Media['checks'][number]['sieves'] },
            ...{ checkedBy: people(checkedBy), checkedAt: checkedAt.toISOString() },
          })),
        };
      }),
      next: rows.length > limit ? (shown.at(-1)?.id ?? null) : null,
    };
  }

  async reviews({ show, after, limit }: Input<typeof mediaOperations.listMediaReviews>) {
    const found = await this.reads.sql<FoundReview>(reviewsSql, [show, after ?? null, limit + 1]);
    const shown = found.slice(0, limit);
    return {
      rows: shown.map(
        ({ lot, startedAt, workOrder, releasedAt, checkedAt, decidedAt, ...row }): Review => ({
          ...row,
          lot: { ...lot, startedAt: startedAt.toISOString() },
          workOrder: { ...workOrder, releasedAt: releasedAt?.toISOString() ?? null },
          checkedAt: checkedAt.toISOString(),
          decidedAt: decidedAt?.toISOString() ?? null,
        }),
      ),
      next: found.length > limit ? (shown.at(-1)?.id ?? null) : null,
    };
  }
}

/** $1 open or all, $2 the last id seen, $3 most rows. A lot that is peened again or broken up answers its doubt by itself. */
const reviewsSql = `
  SELECT r.id::text, json_build_object('id', l.id, 'number', l.number, 'state', l.state) AS lot, l.started_at AS "startedAt",
    json_build_object('id', m.id, 'code', m.code) AS media, c.reasons, c.checked_at AS "checkedAt",
    json_build_object('id', w.id, 'number', w.number, 'stage', w.stage) AS "workOrder", w.released_at AS "releasedAt", k.name AS customer,
    json_build_object('designation', um.designation, 'serial', coalesce(u.serial, u.provisional_name, '')) AS unit,
    (SELECT coalesce(json_agg(json_build_object('travelerId', t.id, 'travelerNumber', t.number, 'position', t.position) ORDER BY t.number), '[]')
      FROM peening_parts p JOIN traveler_steps s ON s.id = p.step_id JOIN travelers t ON t.id = s.traveler_id
      WHERE p.lot_id = l.id AND t.work_order_id = w.id) AS parts,
    r.decision, r.reason, d.display_name AS "decidedBy", r.decided_at AS "decidedAt", r.version
  FROM peening_reviews r JOIN peening_checks c ON c.id = r.check_id JOIN peening_media m ON m.id = c.media_id
  JOIN peening_lots l ON l.id = r.lot_id JOIN work_orders w ON w.id = r.work_order_id JOIN customers k ON k.id = w.customer_id
  JOIN unit_models um ON um.id = w.model_id JOIN serialized_items u ON u.id = w.unit_id LEFT JOIN people d ON d.id = r.decided_by
  WHERE ($1 = 'all' OR (r.decision IS NULL AND l.state NOT IN ('redone', 'broken-up'))) AND ($2::text IS NULL OR r.id::text > $2)
  ORDER BY r.id LIMIT $3`;
