import type { governorOperations } from '@hubwright/contracts/governor-tests/operations';
import type { GovernorRun, GovernorRunDetail, WaitingGovernor } from '@hubwright/contracts/governor-tests/run';
import type { Input, Reply } from '@hubwright/contracts/operation';
import { Inject, Injectable } from '@nestjs/common';
import { CLOCK, type Clock } from '../../platform/command/clock.ts';
import { found } from '../../platform/command/version.ts';
import { Reads } from '../../platform/database/reads.ts';
import { blockOf, isGovernorTest, namedTraveler, type TurnRow, turnSql, withTraveler } from '../work-orders/public.ts';
import { acceptanceOf } from './acceptance.ts';
import { namesFor } from './names.ts';
import { applicationInWords } from './program.ts';
import { ProgramQueries, programReply } from './programs.queries.ts';
import { wholeRun } from './run.ts';
import { historyOf, runReply, type StoredRun, shownOf } from './run-reply.ts';

const whole = { ...wholeRun, step: { include: withTraveler } } as const;
/** Earlier visits of one governor that are shown. */
const mostEarlier = 12;

@Injectable()
export class RunQueries {
  constructor(
    @Inject(Reads) private readonly reads: Reads,
    @Inject(ProgramQueries) private readonly programs: ProgramQueries,
    @Inject(CLOCK) private readonly clock: Clock,
  ) {}

  async list({
    stepId,
    limit,
    after,
  }: Input<typeof governorOperations.listGovernorRuns>): Promise<Reply<typeof governorOperations.listGovernorRuns>> {
    const rows = await this.reads.models.governorRun.findMany({
      where: stepId ? { stepId } : {},
      orderBy: { id: 'desc' },
      ...(after ? { cursor: { id: after }, skip: 1 } : {}),
      take: limit + 1,
      include: whole,
    });
    const names = await namesFor(
      this.reads,
      rows.map(({ startedBy }) => startedBy),
    );
    const shown = rows.slice(0, limit).map((row): GovernorRun => runReply(row, names));
    return { rows: shown, next: rows.length > limit ? (shown.at(-1)?.id ?? null) : null };
  }

  async one({ runId }: Input<typeof governorOperations.governorRun>): Promise<GovernorRunDetail> {
    const { models } = this.reads;
    const row = found(await models.governorRun.findUnique({ where: { id: runId }, include: whole }), 'This run');
    const people = [
      ...[row.startedBy, row.program.issuedBy, row.supervisorId ?? ''].filter((id) => id !== ''),
      ...[...row.readings.map(({ takenBy }) => takenBy), ...row.adjustments.map(({ madeBy }) => madeBy)],
    ];
    const [names, current, turns, link, earlier] = await Promise.all([
      namesFor(this.reads, people),
      this.programs.currentIds(),
      this.reads.sql<TurnRow>(turnSql, [[row.step.travelerId], null, 100]),
      models.benchLink.findUnique({ where: { instrumentId: row.benchId } }),
      this.earlier(row),
    ]);
    const turn = turns.find(({ step_id }) => step_id === row.stepId);
    return {
      ...runReply(row, names),
      ...shownOf(row, names),
      program: programReply(row.program, { current, names }),
      supervisor: row.supervisorId ? names(row.supervisorId) : null,
      acceptedBy: acceptanceOf(row)?.method ?? null,
      step: {
        ...{ id: row.stepId, title: row.step.title, state: row.step.state },
        blocked: (turn && blockOf(turn, this.clock.now())) ?? null,
      },
      linked: link !== null,
      history: historyOf(earlier),
    };
  }

  async waiting(): Promise<{ rows: WaitingGovernor[] }> {
    const turns = await this.reads.sql<TurnRow>(turnSql, [null, 'governor-bench', 200]);
    const steps = await this.reads.models.travelerStep.findMany({
      where: { id: { in: turns.map(({ step_id }) => step_id) } },
      include: {
        traveler: {
          include: { ...withTraveler.traveler.include, workOrder: { include: { application: true, customer: true } } },
        },
        governorRuns: { orderBy: { id: 'desc' }, take: 1 },
      },
      take: 200,
    });
    const tests = steps.filter(isGovernorTest);
    const programs = await this.reads.models.governorProgram.findMany({
      where: { revisionId: { in: tests.map(({ traveler }) => traveler.revisionId) } },
      orderBy: { issue: 'desc' },
      select: { id: true, revisionId: true, applicationId: true },
      take: 2000,
    });
    const now = this.clock.now();
    const rows = tests.map((step): WaitingGovernor => {
      const { traveler, governorRuns } = step;
      const { application, applicationId } = traveler.workOrder;
      const turn = turns.find(({ step_id }) => step_id === step.id);
      const isOf = (one: (typeof programs)[number]) =>
        one.revisionId === traveler.revisionId && one.applicationId === applicationId;
      const [run] = governorRuns;
      return {
        ...namedTraveler(traveler),
        ...{ stepId: step.id, title: step.title, caution: step.caution },
        blocked: (turn && blockOf(turn, now)) ?? null,
        designation: turn?.designation ?? '',
        application: application ? applicationInWords(application) : null,
        programId: programs.find(isOf)?.id ?? null,
        run: run ? { id: run.id, number: run.number, state: run.state as GovernorRun['state'] } : null,
      };
    });
    return { rows: rows.sort((one, other) => one.workOrderNumber.localeCompare(other.workOrderNumber)) };
  }

  /** Runs of the same serial that ended before this one began. */
  private earlier({ id, startedAt, step }: StoredRun) {
    return this.reads.models.governorRun.findMany({
      where: {
        ...{ id: { not: id }, startedAt: { lte: startedAt }, state: { in: ['passed', 'failed'] } },
        step: { traveler: { itemId: step.traveler.itemId } },
      },
      orderBy: { startedAt: 'desc' },
      take: mostEarlier,
      include: whole,
    });
  }
}
