import { governorOperations } from '@hubwright/contracts/governor-tests/operations';
import { Problem } from '@hubwright/contracts/problems';
import { defineCommand } from '../../platform/command/command.ts';
import { found } from '../../platform/command/version.ts';
import { nextNumber } from '../../platform/database/counters.ts';
import { isGovernorTest, requireTurn, stepLocks, stepToSign } from '../work-orders/public.ts';
import { acceptanceFor } from './acceptance.ts';
import { mayBegin } from './at-the-bench.ts';
import { applicationInWords } from './program.ts';
import { benchFor, refuseOtherProgram } from './run.ts';

/** A run begins by the program of the application on the work order, and of no other. */
export const beginRun = defineCommand(governorOperations.beginGovernorRun, {
  locks: ({ stepId }, tx) => stepLocks(tx, stepId),
  async execute(context) {
    const { tx, input, actor, now, today, newId } = context;
    const step = await stepToSign(tx, input.stepId);
    if (!isGovernorTest(step)) throw new Problem('no-governor-test', `“${step.title}” asks for no run on the bench`);
    await requireTurn(tx, step, now);
    const program = found(
      await tx.governorProgram.findUnique({ where: { id: input.programId }, include: { application: true } }),
      'This program',
    );
    await refuseOtherProgram(tx, step, program);
    const bench = await benchFor(tx, input.instrumentId, today);
    const { authorisation, supervisor } = await mayBegin(context, input.supervisorId);
    const accepted = await acceptanceFor(tx, { program, benchId: input.instrumentId });
    const open = await tx.governorRun.findFirst({ where: { stepId: step.id, state: 'open' } });
    if (open) throw new Problem('run-open', `${open.number} is open`, { runId: open.id });
    const { workOrderId, number: traveler } = step.traveler;
    const run = { id: newId(), number: await nextNumber(tx, 'GT', 4) };
    await tx.governorRun.create({
      data: {
        ...run,
        ...{ stepId: step.id, workOrderId, programId: program.id, benchId: input.instrumentId, oil: input.oil },
        ...{ startedBy: actor.personId, startedAt: now, supervisorId: supervisor?.personId ?? null },
        ...(accepted ? { accepted: structuredClone(accepted) as object } : {}),
      },
    });
    const application = applicationInWords(program.application);
    return {
      reply: { ...run, version: 1 },
      subjects: [
        { kind: 'governor-run', id: run.id, after: 1 },
        { kind: 'work-order', id: workOrderId },
      ],
      authorisation: { ...authorisation },
      facts: {
        ...{ number: run.number, traveler, application, issue: program.issue, bench: bench?.tag, oil: input.oil },
        ...(accepted ? { acceptedBy: accepted.method } : {}),
        ...(supervisor ? { supervisor: { ...supervisor } } : {}),
      },
    };
  },
});
