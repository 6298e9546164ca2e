import type { InstrumentKind } from '@hubwright/contracts/manuals/words';
import type { Input, Reply } from '@hubwright/contracts/operation';
import type { processOperations } from '@hubwright/contracts/processes/operations';
import { Inject, Injectable } from '@nestjs/common';
import { CLOCK, type Clock } from '../../platform/command/clock.ts';
import { ShopZone } from '../../platform/command/shop-zone.ts';
import { found } from '../../platform/command/version.ts';
import { fromDbDate } from '../../platform/database/dates.ts';
import type { Prisma } from '../../platform/database/generated/client.ts';
import { Reads } from '../../platform/database/reads.ts';

// What is out of service is not overdue, whatever its date says.
const mostOverdueFirst = [
  { inService: 'desc' },
  { calibrationDueOn: 'asc' },
  { tag: 'asc' },
] satisfies Prisma.InstrumentOrderByWithRelationInput[];

type Instruments = Reply<typeof processOperations.listInstruments>['rows'];
type Calibrations = Reply<typeof processOperations.listCalibrations>['rows'];

@Injectable()
export class InstrumentQueries {
  constructor(
    @Inject(Reads) private readonly reads: Reads,
    @Inject(CLOCK) private readonly clock: Clock,
    @Inject(ShopZone) private readonly zone: ShopZone,
  ) {}

  async list(
    input: Input<typeof processOperations.listInstruments>,
  ): Promise<Reply<typeof processOperations.listInstruments>> {
    const { kind, search, after, limit, order } = input;
    const contains = search ? { contains: search, mode: 'insensitive' as const } : undefined;
    const today = await this.zone.today(this.clock.now());
    const rows = await this.reads.models.instrument.findMany({
      where: {
        ...(kind ? { kind } : {}),
        ...(contains ? { OR: [{ tag: contains }, { title: contains }] } : {}),
      },
      orderBy: order === 'due' ? mostOverdueFirst : { tag: 'asc' },
      ...(after ? { cursor: { tag: after }, skip: 1 } : {}),
      take: limit + 1,
    });
    const shown = rows.slice(0, limit).map((row) => {
      const calibrationDueOn = fromDbDate(row.calibrationDueOn);
      return {
        ...row,
        kind: row.kind as InstrumentKind,
        moreDoubts: row.moreDoubts as Instruments[number]['moreDoubts'],
        calibratedOn: fromDbDate(row.calibratedOn),
        calibrationDueOn,
        inCalibration: row.inService && calibrationDueOn >= today,
      };
    });
    return { rows: shown, next: rows.length > limit ? (shown.at(-1)?.tag ?? null) : null };
  }

  /** From the chained record, where nobody can change them; at most the newest hundred. */
  async calibrations(instrumentId: string): Promise<{ rows: Calibrations }> {
    found(await this.reads.models.instrument.findUnique({ where: { id: instrumentId } }), 'This instrument');
    const rows = await this.reads.sql<Omit<Calibrations[number], 'at'> & { at: Date }>(
      `SELECT e.id AS "entryId", e.at, coalesce(p.display_name, '') AS "personName",
         e.body::jsonb #>> '{input,calibratedOn}' AS "calibratedOn",
         e.body::jsonb #>> '{input,calibrationDueOn}' AS "calibrationDueOn",
         coalesce((e.body::jsonb #>> '{input,inService}')::boolean, true) AS "inService",
         coalesce(e.body::jsonb #>> '{input,certificate}', '') AS certificate,
         c.as_found AS "asFound", coalesce(c.points, '[]') AS points,
         (SELECT count(*)::int FROM calibration_reviews r WHERE r.calibration_id = c.id)
           + (SELECT count(*)::int FROM field_reviews r WHERE r.calibration_id = c.id) AS reviews
       FROM record_links l JOIN record_entries e ON e.id = l.entry_id LEFT JOIN people p ON p.id = e.person_id
         LEFT JOIN calibrations c ON c.entry_id = e.id
       WHERE l.subject_kind = 'instrument' AND l.subject_id = $1::uuid
         AND e.command IN ('add-instrument', 'calibrate-instrument')
       ORDER BY l.sequence DESC LIMIT 100`,
      [instrumentId],
    );
    return { rows: rows.map((row) => ({ ...row, at: row.at.toISOString() })) };
  }
}
