import { confirmed, type FormField } from '@hubwright/contracts/manuals/revision';
import type { SheetSpec } from '@hubwright/contracts/manuals/sheets';
import type { InstrumentKind, Phase } from '@hubwright/contracts/manuals/words';
import { signStep } from '../apps/server/src/modules/work-orders/sign-step.command.ts';
import { fitNow } from './equipment.ts';
import { GovernorBench } from './governor-runs.ts';
import { presigned, type SeedRun } from './run.ts';
import { usualSheet } from './usual-sheet.ts';

/** Who does what in the invented shop; everything else is the first technician's. */
const doers: Record<string, string> = {
  cleaning: 'maren',
  'non-destructive-test': 'ludo',
  'shot-peening': 'maren',
  plating: 'maren',
  coating: 'maren',
  'governor-bench': 'tobit',
};

/** The instrument someone reaches for; those with an overdue calibration stay in the drawer. */
const tools: Record<InstrumentKind, string> = {
  caliper: 'CAL-01',
  micrometer: 'MIC-01',
  'dial-indicator': 'DIA-01',
  protractor: 'PRO-01',
  'torque-wrench': 'TRQ-01',
  'pressure-gauge': 'GAU-01',
  'balance-stand': 'BAL-01',
  'thickness-gauge': 'THK-01',
  'governor-bench': 'GOV-01',
  'eddy-current-set': 'EDC-01',
  ohmmeter: 'OHM-01',
  'insulation-tester': 'INS-01',
  'vibration-analyser': 'VIB-01',
};

/** Since the trainee began, in days from today, he coats under the eyes of who else would. */
const traineeSince = -38;
const trainer = 'maren';

/** What stands in entries that are no number and no lot. */
const usual: Record<string, string> = {
  'static weights found': 'washers at two places, noted on the traveler’s sketch',
  'dynamic weights found and taken off': 'none',
};

interface Asking {
  readonly travelerId: string;
  readonly equipmentKind: string | null;
  readonly materials: readonly string[];
  readonly sheet: unknown;
}

interface Measure {
  readonly id: string;
  readonly low: string | null;
  readonly high: string | null;
  readonly decimals: number;
}

/** Signs steps of travelers in their order, each by a person authorised for it, with values inside the limits. */
export class StepSigner {
  private readings = 0;
  readonly bench: GovernorBench;
  constructor(
    private readonly run: SeedRun,
    private readonly instruments: ReadonlyMap<string, string>,
  ) {
    this.bench = new GovernorBench(run, instruments);
  }

  /** Signs every open step of these phases; with `atMost`, so many on each traveler. The unit's own traveler comes last. */
  async sign(workOrderId: string, phases: readonly Phase[], atMost = Number.POSITIVE_INFINITY): Promise<void> {
    const travelers = await this.run.reads.traveler.findMany({
      where: { workOrderId, OR: [{ disposition: null }, { disposition: { not: 'reject' } }] },
      orderBy: { number: 'desc' },
    });
    for (const { id } of travelers)
      for (const step of (await this.openSteps(id, phases)).slice(0, atMost)) await this.signOne(step);
  }

  openSteps(travelerId: string, phases: readonly Phase[]) {
    return this.run.reads.travelerStep.findMany({
      where: { travelerId, state: 'open', phase: { in: [...phases] } },
      orderBy: { sequence: 'asc' },
      include: { measures: { orderBy: { sequence: 'asc' } } },
    });
  }

  /** Who signs a step, and what they enter. */
  entry(step: Awaited<ReturnType<StepSigner['openSteps']>>[number]) {
    const tool = step.instrumentKind ? this.instruments.get(tools[step.instrumentKind as InstrumentKind]) : undefined;
    return {
      by: step.level === 'inspect' ? 'sunniva' : (doers[step.process] ?? 'tech'),
      input: {
        stepId: step.id,
        values: step.measures.map((measure) => ({ measureId: measure.id, value: this.reading(measure) })),
        form: (step.form as unknown as FormField[]).map(({ name, unit, confirm }, index) => ({
          name,
          value: confirm ? confirmed : unit ? String(60 + 7 * index) : (usual[name] ?? `TH-${index + 3}`),
        })),
        ...(tool ? { instrumentId: tool } : {}),
        signature: presigned,
      },
    };
  }

  async signOne(step: Awaited<ReturnType<StepSigner['openSteps']>>[number]): Promise<void> {
    const { by, input: entered } = this.entry(step);
    const input = { ...entered, ...(await this.using(step)) };
    if ((step.sheet as { kind: string } | null)?.kind === 'governor-test') {
      const sheet = { kind: 'governor-test' as const, runId: await this.bench.pass(step.id) };
      return void (await this.run.run(signStep, { ...input, sheet }, { by }));
    }
    if (step.process !== 'coating' || by !== trainer || this.run.now() < this.run.day(traineeSince))
      return void (await this.run.run(signStep, input, { by }));
    const supervisorId = await this.run.personId(trainer);
    const signed = { ...input, supervisorId, supervisorSignature: presigned };
    await this.run.run(signStep, signed, { by: 'piers' });
  }

  /** The tank or test system, checked before its first part of the day, and lots of the material it takes. */
  private async using({ travelerId, equipmentKind, materials, sheet }: Asking) {
    const workOrder = await this.run.reads.workOrder.findFirstOrThrow({
      where: { travelers: { some: { id: travelerId } } },
      select: { applicationId: true },
    });
    const lots = await this.run.reads.lot.findMany({
      where: {
        part: { number: { in: [...materials] } },
        state: 'accepted',
        expiresOn: { gt: new Date(this.run.now()) },
      },
      orderBy: { receivedAt: 'asc' },
      distinct: ['partId'],
    });
    return {
      ...usualSheet(sheet as SheetSpec | null, {
        applicationId: workOrder.applicationId,
        at: new Date(this.run.now()),
      }),
      ...(equipmentKind ? { equipmentId: await fitNow(this.run, equipmentKind) } : {}),
      lotIds: lots.map(({ id }) => id),
    };
  }

  /** Inside the limits, never twice quite the same. */
  private reading({ low, high, decimals }: Measure): string {
    this.readings += 1;
    const share = 0.3 + ((this.readings * 37) % 40) / 100;
    const least = low === null ? Number(high) * 0.4 : Number(low);
    const most = high === null ? Number(low) * 1.02 + (decimals === 0 ? 1 : 0) : Number(high);
    return (least + (most - least) * share).toFixed(decimals);
  }
}
