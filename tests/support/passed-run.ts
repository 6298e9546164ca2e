import type { ProgramContent } from '@hubwright/contracts/governor-tests/program';
import { beginRun } from '../../apps/server/src/modules/governor-tests/begin-run.command.ts';
import { endRun } from '../../apps/server/src/modules/governor-tests/end-run.command.ts';
import { issueProgram } from '../../apps/server/src/modules/governor-tests/issue-program.command.ts';
import { takeReading } from '../../apps/server/src/modules/governor-tests/take-reading.command.ts';
import { readsOf } from './arrivals.ts';
import type { Job } from './job.ts';
import { actorOf, pin } from './people.ts';
import type { ShopApp } from './shop-app.ts';

/** A run of a governor's test in which every point is good, as a signature of the step names it. */
export async function passedRun({ shop, reads, people }: Job, stepId: string): Promise<string> {
  const step = await reads.travelerStep.findUniqueOrThrow({
    where: { id: stepId },
    include: { traveler: { include: { workOrder: true } } },
  });
  const { revisionId, workOrder } = step.traveler;
  const applicationId = workOrder.applicationId ?? '';
  const newest = { orderBy: { issue: 'desc' } } as const;
  const program =
    (await reads.governorProgram.findFirst({ where: { revisionId, applicationId }, ...newest })) ??
    (await issuedAnew(shop, { revisionId, applicationId }));
  const bench = await reads.instrument.findFirstOrThrow({
    where: { kind: 'governor-bench', inService: true, calibrationDueOn: { gte: new Date() } },
    orderBy: { tag: 'asc' },
  });
  const safe = { guardClosed: true, hosesRated: true, stopWithinReach: true, rotationChecked: true } as const;
  const begun = { stepId, programId: program.id, instrumentId: bench.id, oil: 'SAE 50, lot BO-117', ...safe };
  const { id: runId } = await shop.run(beginRun, begun, people.technician);
  let version = 1;
  for (const { name, unit, low, high } of (program.content as unknown as ProgramContent).points) {
    const reading = { runId, point: name, value: low ?? high ?? '0', unit, oilTemperature: '165', oilUnit: 'degF' };
    version = (await shop.run(takeReading, { ...reading, oilUnit: 'degF' }, people.technician)).version;
  }
  await shop.run(endRun, { runId, result: 'passed' }, people.technician, { version });
  return runId;
}

/** A revision that came since has no program of its own before an inspector issues one; here it says the same as the one before. */
async function issuedAnew(shop: ShopApp, of: { revisionId: string; applicationId: string }) {
  const reads = readsOf(shop);
  const { applicationId } = of;
  const before = await reads.governorProgram.findFirstOrThrow({
    where: { applicationId },
    orderBy: { issuedAt: 'desc' },
  });
  const content = before.content as unknown as ProgramContent;
  const issued = { ...of, basis: before.basis, ...content, signature: pin };
  const { id } = await shop.run(issueProgram, issued, await actorOf(shop, 'sunniva'));
  return reads.governorProgram.findUniqueOrThrow({ where: { id } });
}
