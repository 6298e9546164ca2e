import { cycleMeters } from '@hubwright/contracts/customers/operations';
import type { Input, Reply } from '@hubwright/contracts/operation';
import type { ReleaseContent } from '@hubwright/contracts/releases/operations';
import type { unitHistoryOperations, WholeUnitHistory } from '@hubwright/contracts/units/unit-history-operations';
import { Inject, Injectable, StreamableFile } from '@nestjs/common';
import { CLOCK, type Clock } from '../../platform/command/clock.ts';
import { found } from '../../platform/command/version.ts';
import { fromDbDate, fromDbDateOrNull, toDbDate } from '../../platform/database/dates.ts';
import { Reads } from '../../platform/database/reads.ts';
import { figureShown } from '../customers/public.ts';
import { IntervalQueries, TimesQueries, UnitQueries } from '../units/public.ts';
import { printHistory } from './print-history.ts';
import { papersOf, visitsOf } from './unit-papers.ts';
import { namesOf, visitsInHistory } from './visits-in-history.ts';

type Of = Input<typeof unitHistoryOperations.wholeUnitHistory>;

const mostShown = 200;

/** What a unit or part has on paper, and its whole history: a fixed number of statements however long its life was. */
@Injectable()
export class UnitHistoryQueries {
  constructor(
    @Inject(Reads) private readonly reads: Reads,
    @Inject(CLOCK) private readonly clock: Clock,
    @Inject(UnitQueries) private readonly units: UnitQueries,
    @Inject(TimesQueries) private readonly times: TimesQueries,
    @Inject(IntervalQueries) private readonly intervals: IntervalQueries,
  ) {}

  async papers({ itemId }: Of): Promise<Reply<typeof unitHistoryOperations.unitPapers>> {
    const { models } = this.reads;
    found(await models.serializedItem.findUnique({ where: { id: itemId }, select: { id: true } }), 'This unit or part');
    return papersOf(models, await visitsOf(models, itemId), mostShown);
  }

  async whole({ itemId }: Of): Promise<WholeUnitHistory> {
    const { models } = this.reads;
    const unit = await this.units.history(itemId);
    const { where, ...times } = await this.times.asOf({ itemId });
    const visits = await visitsOf(models, itemId);
    const isUnit = unit.kind === 'assembly';
    const shop = await models.shopProfile.findUnique({ where: { id: 1 }, select: { name: true } });
    const papers = await papersOf(models, visits);
    const { id, kind, maker, partNumber, serial, provisionalName, model, joinedInto } = unit;
    return {
      format: 'unit-history/1',
      writtenAt: this.clock.now().toISOString(),
      shop: shop?.name ?? '',
      identity: {
        ...{ id, kind, maker, partNumber, serial, provisionalName },
        model: model && { id: model.id, designation: model.designation },
        joinedIntoId: joinedInto?.id ?? null,
      },
      where,
      parts: unit.parts.map(({ version: _, ...part }) => part),
      installedIn: unit.installedIn,
      intervals: (await this.intervals.list(itemId)).rows,
      readings: await this.readings(times.pieces),
      times: { ...times, papers: unit.times },
      workOrders: await visitsInHistory(models, { itemId, isUnit, visits }),
      releases: await this.withContent(papers.releases),
      directives: await this.directives([itemId, ...unit.parts.map((part) => part.id)]),
      documents: papers.documents,
      papers: papers.papers,
    };
  }

  async pdf(input: Of): Promise<StreamableFile> {
    const history = await this.whole(input);
    const { partNumber, serial, provisionalName } = history.identity;
    const name = `history-${partNumber}-${serial ?? provisionalName ?? 'unread'}`.replaceAll(/[^A-Za-z0-9-]+/g, '-');
    return new StreamableFile(await printHistory(history), {
      type: 'application/pdf',
      disposition: `inline; filename="${name}.pdf"`,
    });
  }

  /** What its meters read while it flew by them: what its times are computed from. */
  private async readings(pieces: WholeUnitHistory['times']['pieces']): Promise<WholeUnitHistory['readings']> {
    const flown = pieces.flatMap(({ aircraft, meter, from, to }) => {
      if (aircraft === null || meter === null) return [];
      const readOn = { gte: toDbDate(from), ...(to === null ? {} : { lte: toDbDate(to) }) };
      return [{ aircraftId: aircraft.id, meter: { in: [meter, ...cycleMeters] }, readOn }];
    });
    if (flown.length === 0) return [];
    const rows = await this.reads.models.aircraftReading.findMany({
      where: { OR: flown, struck: null },
      orderBy: [{ readOn: 'asc' }, { hoursTenths: 'asc' }],
      include: { aircraft: { select: { registration: true } } },
    });
    return rows.map(({ id, aircraftId, aircraft, meter, readOn, hoursTenths }) => ({
      ...{ id, aircraftId, registration: aircraft.registration, meter, readOn: fromDbDate(readOn) },
      ...figureShown(meter, hoursTenths),
    }));
  }

  private async withContent(releases: Reply<typeof unitHistoryOperations.unitPapers>['releases']) {
    const rows = await this.reads.models.release.findMany({
      where: { id: { in: releases.map(({ id }) => id) } },
      select: { id: true, content: true },
    });
    const contents = new Map(rows.map(({ id, content }) => [id, content]));
    return releases.map((release) => ({ ...release, content: contents.get(release.id) as unknown as ReleaseContent }));
  }

  private async directives(itemIds: readonly string[]): Promise<WholeUnitHistory['directives']> {
    const rows = await this.reads.models.directiveCompliance.findMany({
      where: { itemId: { in: [...new Set(itemIds)] } },
      orderBy: [{ recordedAt: 'asc' }, { id: 'asc' }],
      include: { directive: { select: { number: true, revision: true, title: true } } },
    });
    const names = await namesOf(
      this.reads.models,
      rows.map(({ recordedBy }) => recordedBy),
    );
    return rows.map(({ directive, entryId: _, ...row }) => ({
      ...row,
      ...directive,
      doneOn: fromDbDate(row.doneOn),
      deferredUntil: fromDbDateOrNull(row.deferredUntil),
      recordedBy: { id: row.recordedBy, displayName: names.get(row.recordedBy) ?? '' },
      recordedAt: row.recordedAt.toISOString(),
    }));
  }
}
