import type { ProgramContent } from '@hubwright/contracts/governor-tests/program';
import { beginRun } from '../apps/server/src/modules/governor-tests/begin-run.command.ts';
import { endRun } from '../apps/server/src/modules/governor-tests/end-run.command.ts';
import { recordAdjustment } from '../apps/server/src/modules/governor-tests/record-adjustment.command.ts';
import { takeReading } from '../apps/server/src/modules/governor-tests/take-reading.command.ts';
import type { SeedRun } from './run.ts';

type Point = ProgramContent['points'][number];

const by = 'tobit';
const warm = { oilTemperature: '165', oilUnit: 'degF' } as const;

/** Governors on the bench, by the program of their application. */
export class GovernorBench {
  private readings = 0;
  constructor(
    private readonly run: SeedRun,
    private readonly instruments: ReadonlyMap<string, string>,
  ) {}

  /** A run in which every point is good; its id, for the signature of the step. */
  async pass(stepId: string): Promise<string> {
    const { runId, points } = await this.begin(stepId);
    for (const point of points) await this.take(runId, point, this.inside(point));
    const { version } = await this.run.reads.governorRun.findUniqueOrThrow({ where: { id: runId } });
    await this.run.run(endRun, { runId, result: 'passed' }, { by, version });
    return runId;
  }

  /** Half a run: the high stop was out, was set and taken again; the rest waits for today. */
  async half(stepId: string): Promise<void> {
    const { runId, points } = await this.begin(stepId);
    const stop = points.findIndex(({ kind }) => kind === 'high-stop');
    for (const point of points.slice(0, stop)) await this.take(runId, point, this.inside(point));
    const high = points[stop] as Point;
    await this.take(runId, high, String(Number(high.high) + 14));
    const screw = { what: 'high speed stop screw', before: 'as received', after: 'three quarters of a turn in' };
    await this.run.run(recordAdjustment, { runId, ...screw }, { by });
    await this.take(runId, high, this.inside(high));
  }

  private async begin(stepId: string): Promise<{ runId: string; points: Point[] }> {
    const step = await this.run.reads.travelerStep.findUniqueOrThrow({
      where: { id: stepId },
      include: { traveler: { include: { workOrder: true } } },
    });
    const { revisionId, workOrder } = step.traveler;
    const program = await this.run.reads.governorProgram.findFirstOrThrow({
      where: { revisionId, applicationId: workOrder.applicationId ?? '' },
      orderBy: { issue: 'desc' },
    });
    const safe = { guardClosed: true, hosesRated: true, stopWithinReach: true, rotationChecked: true } as const;
    const bench = { instrumentId: this.instruments.get('GOV-01') as string, oil: 'SAE 50, lot BO-117' };
    const { id, number } = await this.run.run(beginRun, { stepId, programId: program.id, ...bench, ...safe }, { by });
    // Another test reads otherwise.
    this.readings += 7 * Number(number.replace(/\D/g, ''));
    return { runId: id, points: (program.content as unknown as ProgramContent).points };
  }

  private async take(runId: string, { name, unit }: Point, value: string): Promise<void> {
    await this.run.run(takeReading, { runId, point: name, value, unit, ...warm }, { by });
  }

  /** Inside the limits, never twice quite the same. */
  private inside({ low, high, decimals }: Point): string {
    this.readings += 1;
    const share = 0.3 + ((this.readings * 37) % 40) / 100;
    const least = low === undefined ? Number(high) * 0.4 : Number(low);
    const most = high === undefined ? Number(low) * 1.1 : Number(high);
    return (least + (most - least) * share).toFixed(decimals);
  }
}
