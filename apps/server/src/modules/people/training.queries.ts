import type { Input, Reply } from '@hubwright/contracts/operation';
import type { AuthorisationLevel } from '@hubwright/contracts/people/authorisation-levels';
import type { Process } from '@hubwright/contracts/people/operations';
import type { trainingOperations } from '@hubwright/contracts/people/training-operations';
import { addDays } from '@hubwright/rules/dates';
import { trainingOn } from '@hubwright/rules/training';
import { Inject, Injectable } from '@nestjs/common';
import type { Actor } from '../../platform/command/actor.ts';
import { CLOCK, type Clock } from '../../platform/command/clock.ts';
import { ShopZone } from '../../platform/command/shop-zone.ts';
import { found } from '../../platform/command/version.ts';
import { fromDbDate, fromDbDateOrNull } from '../../platform/database/dates.ts';
import { Reads } from '../../platform/database/reads.ts';
import type { FileToSend } from '../../platform/files/send-file.ts';
import { holdersOf, inForceOn } from './holders.ts';
import { linesOf, trainingGaps } from './training-gaps.ts';

type Operations = typeof trainingOperations;
type Log = Reply<Operations['trainingLog']>;

interface SupervisedRow {
  process: Process;
  steps: number;
  minutes: number;
  clockedMinutes: number;
  first: string;
  last: string;
  supervisors: string[];
}

/** Standing sign-offs of a trainee that a supervisor signed beside, by process. */
const supervisedSql = `
  SELECT s.process, count(*)::int AS steps, sum(s.standard_minutes)::int AS minutes,
    coalesce(sum((SELECT sum(extract(epoch FROM e.ended_at - e.started_at) / 60) FROM clock_entries e
      WHERE e.step_id = s.id AND e.person_id = o.person_id AND e.load_id IS NULL AND e.stands AND e.ended_at IS NOT NULL)), 0)::int AS "clockedMinutes",
    to_char(min(o.performed_at AT TIME ZONE $2), 'YYYY-MM-DD') AS first,
    to_char(max(o.performed_at AT TIME ZONE $2), 'YYYY-MM-DD') AS last,
    array_agg(DISTINCT p.display_name ORDER BY p.display_name) AS supervisors
  FROM sign_offs o JOIN sign_offs c ON c.countersigns_id = o.id
    JOIN traveler_steps s ON s.id = o.step_id JOIN people p ON p.id = c.person_id
  WHERE o.person_id = $1 AND NOT EXISTS (SELECT FROM sign_offs n WHERE n.supersedes_id = o.id)
  GROUP BY s.process ORDER BY s.process`;

@Injectable()
export class TrainingQueries {
  constructor(
    @Inject(Reads) private readonly reads: Reads,
    @Inject(CLOCK) private readonly clock: Clock,
    @Inject(ShopZone) private readonly zone: ShopZone,
  ) {}

  private today(): Promise<string> {
    return this.zone.today(this.clock.now());
  }

  async items(): Promise<Reply<Operations['listTrainingItems']>> {
    const rows = await this.reads.models.trainingItem.findMany({ orderBy: { title: 'asc' }, take: 500 });
    return { rows: rows.map((row) => ({ ...row, processes: row.processes as Process[] })) };
  }

  async log({ personId }: Input<Operations['trainingLog']>): Promise<Log> {
    found(await this.reads.models.person.findUnique({ where: { id: personId }, select: { id: true } }), 'This person');
    const [rows, notCurrent, supervised] = await Promise.all([
      this.rows(personId),
      this.notCurrent(personId),
      this.reads.sql<SupervisedRow>(supervisedSql, [personId, await this.zone.zone()]),
    ]);
    return { rows, notCurrent, supervised };
  }

  private async rows(personId: string): Promise<Log['rows']> {
    const rows = await this.reads.models.trainingRecord.findMany({
      where: { personId },
      include: { supersededBy: { select: { id: true } } },
      orderBy: [{ heldOn: 'desc' }, { recordedAt: 'desc' }],
      take: 500,
    });
    const people = await this.reads.models.person.findMany({
      where: { id: { in: [...new Set(rows.map(({ recordedBy }) => recordedBy))] } },
      select: { id: true, displayName: true },
    });
    return rows.map(({ supersededBy, paperName, heldOn, dueOn, kind, result, ...row }) => ({
      ...row,
      kind: kind as Log['rows'][number]['kind'],
      result: result as Log['rows'][number]['result'],
      heldOn: fromDbDate(heldOn),
      dueOn: fromDbDateOrNull(dueOn),
      paper: paperName,
      supersededById: supersededBy?.id ?? null,
      recordedBy: people.find(({ id }) => id === row.recordedBy)?.displayName ?? '',
    }));
  }

  /** Authorisations in force that a training keeps from being used. */
  private async notCurrent(personId: string): Promise<Log['notCurrent']> {
    const today = await this.today();
    const held = await this.reads.models.authorisation.findMany({
      where: { personId, level: { not: 'trainee' }, ...inForceOn(today) },
      orderBy: [{ process: 'asc' }, { level: 'asc' }],
    });
    const lacking = [];
    const items = await this.reads.models.trainingItem.findMany({
      where: { active: true },
      select: { processes: true },
    });
    const asked = held.filter(({ process }) => items.some(({ processes }) => processes.includes(process)));
    for (const { process, level } of asked) {
      const need = { process: process as Process, day: today };
      const missing = (await trainingGaps(this.reads.models, need, [personId])).get(personId);
      if (missing) lacking.push({ process: need.process, level: level as AuthorisationLevel, missing });
    }
    return lacking;
  }

  async due({ withinDays }: Input<Operations['trainingDue']>): Promise<Reply<Operations['trainingDue']>> {
    const today = await this.today();
    const items = await this.reads.models.trainingItem.findMany({ where: { active: true }, take: 500 });
    const held = await this.reads.models.authorisation.findMany({
      where: {
        level: { not: 'trainee' },
        process: { in: items.flatMap(({ processes }) => processes) },
        ...inForceOn(today),
      },
      include: { person: { select: { displayName: true } } },
      take: 5000,
    });
    const people = new Map(held.map(({ personId, person }) => [personId, person.displayName]));
    const personIds = [...people.keys()];
    const lines = await linesOf(this.reads.models, { personIds, itemIds: items.map(({ id }) => id), day: today });
    const limit = addDays(today, withinDays);
    const rows = [...people].flatMap(([personId, person]) =>
      items.flatMap(({ id: itemId, title, processes }) => {
        const resting = held.filter((one) => one.personId === personId && processes.includes(one.process));
        const { current, until } = trainingOn(lines.get(`${personId} ${itemId}`) ?? [], today);
        if (resting.length === 0 || (current && (until === null || until > limit))) return [];
        const rest = [...new Set(resting.map(({ process }) => process as Process))];
        return [{ personId, person, itemId, title, processes: rest, dueOn: until }];
      }),
    );
    return { rows: rows.sort((a, b) => (a.dueOn ?? '').localeCompare(b.dueOn ?? '')) };
  }

  async inspectionLists(): Promise<Reply<Operations['inspectionLists']>> {
    const lists = await this.reads.models.inspectionList.findMany({ orderBy: { process: 'asc' }, take: 100 });
    const people = await this.reads.models.person.findMany({
      where: { id: { in: lists.flatMap(({ personIds }) => personIds) } },
      select: { id: true, displayName: true },
      orderBy: { displayName: 'asc' },
    });
    return {
      rows: lists.map(({ process, personIds, version }) => ({
        process: process as Process,
        people: people.filter(({ id }) => personIds.includes(id)),
        version,
      })),
    };
  }

  /** Everyone may ask: a page shows a trainee whom to call, and nobody else a second signature. */
  async supervision(
    { process }: Input<Operations['supervision']>,
    { personId }: Actor,
  ): Promise<Reply<Operations['supervision']>> {
    const today = await this.today();
    const [doers, trainees] = await Promise.all([
      holdersOf(this.reads.models, { process, level: 'perform', today }),
      holdersOf(this.reads.models, { process, level: 'trainee', today }),
    ]);
    const able = doers.filter(({ missing }) => missing.length === 0);
    const isOwn = (holder: { personId: string }) => holder.personId === personId;
    const needed = trainees.some(isOwn) && !able.some(isOwn);
    const supervisors = able.map(({ personId: id, name, hasPin }) => ({ id, displayName: name, hasPin }));
    return { needed, supervisors: needed ? supervisors : [] };
  }

  async paper({ trainingId: id }: Input<Operations['trainingPaper']>): Promise<FileToSend> {
    const row = await this.reads.models.trainingRecord.findUnique({ where: { id } });
    const { paperHash, paperName } = found(row, 'This training');
    const stored = paperHash && (await this.reads.models.storedFile.findUnique({ where: { hash: paperHash } }));
    const { hash, size, mediaType } = found(stored || null, 'The paper of this training');
    return { hash, size, mediaType, fileName: paperName ?? 'training' };
  }
}
