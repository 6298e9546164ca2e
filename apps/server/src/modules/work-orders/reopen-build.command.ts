import { Problem } from '@hubwright/contracts/problems';
import { reopenOperations } from '@hubwright/contracts/work-orders/reopen-operations';
import { mayRepairAgain } from '@hubwright/rules/routes';
import { type Context, defineCommand, type Subject } from '../../platform/command/command.ts';
import type { Tx } from '../../platform/database/client.ts';
import { replaceSeals, sealLocks } from '../kits/public.ts';
import { refuseHeld } from './advance.ts';
import { buildLocks, openClosedBuild } from './open-closed-build.ts';
import { isBuildTest, repeatSteps } from './repeat-steps.ts';
import { performedAt, refuseInLoad, requireTurn, type SignedStep, stepLocks, stepToSign } from './step-signing.ts';
import { writeStepSignature } from './write-step-signature.ts';

const operation = reopenOperations.reopenBuild;
type Reopening = Context<typeof operation>;

/** A failed test signed as what it is: the build opens for the named steps, and used-up seals come anew at the shop’s cost. */
export const reopenBuild = defineCommand(operation, {
  async locks(input, tx) {
    const locks = await stepLocks(tx, input.stepId, input.equipmentId);
    const orders = locks.filter((lock) => lock.startsWith('work-order:')).map((lock) => lock.slice(11));
    return [...new Set([...locks, ...(await buildLocks(tx, orders)), ...(await sealLocks(tx, input.seals))])];
  },
  async execute(context) {
    const { tx, input } = context;
    const step = await stepToSign(tx, input.stepId);
    const supersedesId = await refuseUntestable(context, step);
    const { traveler } = step;
    const written = await writeStepSignature(context, step, {
      entry: input,
      signature: {
        ...{ result: 'fail', meaning: operation.signs ?? '' },
        reopens: { reason: input.reason, repeat: input.repeat, seals: input.seals },
        ...(supersedesId === undefined ? {} : { supersedesId }),
      },
    });
    const { stage, kits } = await openClosedBuild(context, traveler.workOrderId);
    const cause = `“${step.title}” failed`;
    const by = { stepId: step.id, signOffId: written.signOffId, cause, reason: input.reason };
    const replaced = await replaceSeals(context, traveler.workOrderId, { lineIds: input.seals, by });
    const steps = await repeatSteps(context, step, input.repeat);
    const seals = replaced.seals.reduce((sum, { quantity }) => sum + quantity, 0);
    const others: Subject[] = replaced.subjects.filter(({ id }) => !kits.some((kit) => kit.id === id));
    return {
      reply: {
        ...{ id: traveler.id, version: written.travelerVersion, signOffId: written.signOffId },
        ...{ stage, steps, seals, cost: replaced.cost },
      },
      subjects: [
        { kind: 'traveler', id: traveler.id, before: traveler.version, after: written.travelerVersion },
        { kind: 'work-order', id: traveler.workOrderId },
        ...[...kits, ...others],
      ],
      authorisation: written.authorisation,
      facts: {
        ...{ traveler: traveler.number, step: step.title, outside: written.outside, steps, stage },
        seals: replaced.seals.map(({ position, part, quantity }) => ({ position, part: part.number, quantity })),
        shopCost: replaced.cost,
      },
      reason: input.reason,
    };
  },
});

/**
 * Throws why this cannot be a failed test that opens the build now: `no-build-test`, `repairs-used-up`, and for an open step whatever
 * keeps it from being signed. Answers the sign-off it takes the place of, where the test was signed as good before.
 */
async function refuseUntestable(context: Reopening, step: SignedStep): Promise<string | undefined> {
  const { tx } = context;
  const { title, attempt, mostRepairs, traveler } = step;
  if (!isBuildTest(step)) throw new Problem('no-build-test', `“${title}” is no test of the built unit`);
  if (!mayRepairAgain(step))
    throw new Problem(
      'repairs-used-up',
      `“${title}” would fail in attempt ${attempt}; the manual allows ${mostRepairs + 1}: raise a finding, and an inspector decides`,
      { step: title, attempt, mostRepairs },
    );
  await refuseInLoad(tx, [step]);
  if (step.state !== 'signed') {
    await requireTurn(tx, step, performedAt(context));
    return undefined;
  }
  const { number, stage } = traveler.workOrder;
  if (!['in-work', 'build', 'final-inspection'].includes(stage))
    throw new Problem('wrong-state', `${number} is not being built`, { stage });
  await refuseHeld(tx, traveler.workOrder);
  return standingSignOff(tx, step.id);
}

async function standingSignOff(tx: Tx, stepId: string): Promise<string | undefined> {
  const where = { stepId, countersignsId: null };
  return (await tx.signOff.findFirst({ where, orderBy: [{ signedAt: 'desc' }, { id: 'desc' }], select: { id: true } }))
    ?.id;
}
