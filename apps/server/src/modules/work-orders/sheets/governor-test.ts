import { Problem } from '@hubwright/contracts/problems';
import type { SignedStep, Signing } from '../step-signing.ts';
import { type Judge, sheetWrong } from './judge.ts';

/** A run as it was frozen when it ended: what a signature binds. */
interface EndedRun {
  readonly number: string;
  readonly program: { readonly application: string; readonly manual: string; readonly issue: number };
  readonly bench: { readonly tag: string };
  readonly oil: string;
  readonly acceptedBy?: string | null;
  readonly supervisor?: string | null;
  readonly points: readonly {
    readonly name: string;
    readonly state: string;
    readonly limits: string;
    /** Inside them, where the shop's guard band narrowed them. */
    readonly accepted?: string;
    readonly value: string | null;
    readonly unit: string | null;
  }[];
  readonly adjustments: readonly { readonly what: string; readonly before: string; readonly after: string }[];
}

/**
 * The test of a governor goes by its run on the bench, frozen when it ended: nothing is entered here but which. Throws `sheet-wrong` for a
 * run of another step or one that has not ended, `wrong-application` and `program-superseded` where it was not the program of today,
 * `acceptance-changed` where the shop accepts readings otherwise by now.
 */
export const judgeGovernorTest: Judge<'governor-test'> = async ({ tx }, { step, entry, instrument }) => {
  const run = await tx.governorRun.findUnique({ where: { id: entry.runId }, include: { program: true, bench: true } });
  if (run?.stepId !== step.id) throw sheetWrong('This run belongs to another step', '/runId');
  if (run.state !== 'passed' && run.state !== 'failed')
    throw sheetWrong(`${run.number} is ${run.state.replace('-', ' ')}: end it as passed or failed first`, '/runId');
  if (instrument !== undefined && instrument.id !== run.benchId)
    throw new Problem('instrument-wrong', `${run.number} was run on ${run.bench.tag}, not on ${instrument.tag}`);
  await refuseOtherProgram(tx, step, run.program);
  const record = run.record as unknown as EndedRun;
  await refuseOtherGuardBand(tx, record);
  return {
    said: saidOf(record),
    reasons: record.points.filter(({ state }) => state !== 'good').map(pointInWords),
    verdict: record,
  };
};

/** What the run was tested by is still what the unit is tested by. */
async function refuseOtherProgram(
  tx: Signing['tx'],
  { traveler }: SignedStep,
  program: { id: string; applicationId: string },
): Promise<void> {
  const { applicationId, number } = traveler.workOrder;
  if (applicationId !== program.applicationId)
    throw new Problem('wrong-application', `The run was by the program of another application than ${number} names`);
  const current = await tx.governorProgram.findFirst({
    where: { revisionId: traveler.revisionId, applicationId },
    orderBy: { issue: 'desc' },
  });
  if (current?.id !== program.id)
    throw new Problem('program-superseded', 'The run was not by the current program of the application');
}

async function refuseOtherGuardBand(tx: Signing['tx'], { number, acceptedBy }: EndedRun): Promise<void> {
  const shop = await tx.shopProfile.findUnique({ where: { id: 1 }, select: { guardBand: true } });
  const asked = shop?.guardBand ?? 'none';
  if (asked !== (acceptedBy ?? 'none'))
    throw new Problem('acceptance-changed', `${number} was accepted by another guard band than the shop asks for`);
}

function saidOf({ number, program, bench, oil, supervisor, points, adjustments }: EndedRun) {
  return [
    { name: 'Run', value: `${number}, on ${bench.tag}, oil ${oil}` },
    { name: 'Program', value: `${program.application}; ${program.manual}, issue ${program.issue}` },
    ...(supervisor ? [{ name: 'Run supervised by', value: supervisor }] : []),
    ...points.map((point) => ({ name: point.name, value: readInWords(point) })),
    ...adjustments.map(({ what, before, after }) => ({
      name: 'Adjusted',
      value: `${what}, from ${before} to ${after}`,
    })),
  ];
}

function readInWords({ value, unit, limits, accepted }: EndedRun['points'][number]): string {
  const by = accepted ? `${limits}, accepted ${accepted}` : limits;
  return value === null ? `not taken (${by})` : `${value} ${unit} (${by})`;
}
function pointInWords(point: EndedRun['points'][number]): string {
  return `${point.name} ${readInWords(point)}`;
}
