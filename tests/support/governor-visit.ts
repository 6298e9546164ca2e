import { governorOperations as op } from '@hubwright/contracts/governor-tests/operations';
import type { ProgramContent } from '@hubwright/contracts/governor-tests/program';
import { closeBuild } from '../../apps/server/src/modules/work-orders/close-build.command.ts';
import { type Arrival, readsOf } from './arrivals.ts';
import { Job } from './job.ts';
import { pin } from './people.ts';
import type { ShopApp, Visitor } from './shop-app.ts';

export type Point = ProgramContent['points'][number];
export const warm = { oilTemperature: '165', oilUnit: 'degF' } as const;
export const safe = { guardClosed: true, hosesRated: true, stopWithinReach: true, rotationChecked: true } as const;

/** A governor at the dock, for one installation or, with `null`, for nobody knows which. */
export async function governor(shop: ShopApp, airframe: string | null, position = 'single'): Promise<Partial<Arrival>> {
  const reads = readsOf(shop);
  const model = await reads.unitModel.findFirstOrThrow({ where: { designation: 'VG14' } });
  const application = airframe
    ? await reads.application.findFirstOrThrow({ where: { modelId: model.id, airframe, position } })
    : undefined;
  return {
    ...{ modelId: model.id, aircraftId: undefined, applicationId: application?.id, scope: 'governor', parts: [] },
    looseItems: [],
  };
}

/** A governor carried as far as its test on the bench. */
export async function atTheBench(shop: ShopApp, serial: string, changes: Partial<Arrival>): Promise<Job> {
  const job = await Job.arrived(shop, serial, changes);
  await job.inWork();
  await job.signed('repair');
  await job.takenOff();
  await job.filled();
  await job.signed('build');
  await closeBuildAgain(job);
  return job;
}

/** The build is whole, closed by who built it. */
export async function closeBuildAgain(job: Job): Promise<void> {
  await job.shop.run(closeBuild, { workOrderId: job.id, signature: pin }, job.people.technician);
}

/** One run on the bench over HTTP. */
export class BenchRun {
  private constructor(
    readonly visitor: Visitor,
    readonly id: string,
    readonly points: readonly Point[],
  ) {}

  static async begin(job: Job, visitor: Visitor): Promise<BenchRun> {
    const input = await beginning(job);
    const { status, body } = await visitor.call(op.beginGovernorRun, input);
    if (status !== 200) throw new Error(JSON.stringify(body));
    const program = await job.reads.governorProgram.findUniqueOrThrow({ where: { id: input.programId } });
    return new BenchRun(visitor, body.id, (program.content as unknown as ProgramContent).points);
  }

  point(kind: Point['kind']): Point {
    const point = this.points.find((one) => one.kind === kind);
    if (!point) throw new Error(`No point about ${kind}`);
    return point;
  }
  taking(point: Point, changes: object = {}) {
    const reading = { runId: this.id, point: point.name, value: inside(point), unit: point.unit, ...warm };
    return { operation: op.takeGovernorReading, input: { ...reading, ...changes } };
  }
  async take(point: Point, changes: object = {}) {
    const { operation, input } = this.taking(point, changes);
    const { status, body } = await this.visitor.call(operation, input);
    if (status !== 200) throw new Error(JSON.stringify(body));
    return body;
  }
  async takeAll(): Promise<void> {
    for (const point of this.points) await this.take(point);
  }
  async seen() {
    return (await this.visitor.call(op.governorRun, { runId: this.id })).body;
  }
  async ending(result: 'passed' | 'failed' | 'broken-off', reason?: string) {
    const { version } = await this.seen();
    const input = { runId: this.id, result, ...(reason ? { reason } : {}) };
    return { operation: op.endGovernorRun, input, options: { version } };
  }
  async end(result: 'passed' | 'failed' | 'broken-off', reason?: string) {
    const { operation, input, options } = await this.ending(result, reason);
    return this.visitor.call(operation, input, options);
  }
}

/** A run as it begins: by the program of the work order's application, on the bench that is in calibration. */
export async function beginning(job: Job) {
  const step = await job.nextAt('assembly');
  const { applicationId, revisionId } = await job.workOrder();
  const program = await job.reads.governorProgram.findFirst({
    where: { revisionId, ...(applicationId ? { applicationId } : {}) },
    orderBy: { issue: 'desc' },
  });
  const bench = await job.reads.instrument.findFirstOrThrow({
    where: { kind: 'governor-bench', inService: true, calibrationDueOn: { gte: new Date() } },
  });
  return { stepId: step.id, programId: program?.id ?? '', instrumentId: bench.id, oil: 'SAE 50, lot BO-117', ...safe };
}

function inside({ low, high }: Point): string {
  return low ?? high ?? '0';
}
