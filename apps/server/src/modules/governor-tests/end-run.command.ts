import { governorOperations } from '@hubwright/contracts/governor-tests/operations';
import { Problem } from '@hubwright/contracts/problems';
import { type Context, defineCommand } from '../../platform/command/command.ts';
import { sameVersion } from '../../platform/command/version.ts';
import { type Run, refuseEnded, runLocks, runToGoOn, standingOf, subjectsOf, theRun } from './run.ts';
import { recordOf } from './run-record.ts';

const operation = governorOperations.endGovernorRun;
type Ending = Context<typeof operation>;

/** A run ends as what its points say, and never as more; what is signed later is frozen here. Breaking it off is always possible. */
export const endRun = defineCommand(operation, {
  locks: ({ runId }, tx) => runLocks(tx, runId),
  async execute(context) {
    const { tx, input, actor, now, expectedVersion } = context;
    const { run, authorisation } = await runToEnd(context);
    sameVersion(run.version, expectedVersion);
    const { open, out, passes } = standingOf(run);
    if (input.result === 'passed' && !passes) {
      const words = [...open.map((name) => `${name}: not taken`), ...out.map((name) => `${name}: out`)];
      throw new Problem('run-not-whole', words.join('; '), { open: [...open], out: [...out] });
    }
    if (input.result === 'failed' && out.length === 0)
      throw new Problem('run-passes', `No point of ${run.number} is out`, { open: [...open] });
    const reason = reasonOf(context);
    const record = await recordOf(tx, run, { reason });
    const version = run.version + 1;
    const ended = { state: input.result, reason, record, endedBy: actor.personId, endedAt: now, version };
    await tx.governorRun.update({ where: { id: run.id }, data: ended });
    return {
      reply: { id: run.id, version, state: input.result, out: [...out] },
      subjects: subjectsOf(run),
      ...(authorisation ? { authorisation: { ...authorisation } } : {}),
      facts: { number: run.number, result: input.result, out: [...out], open: [...open] },
      ...(reason ? { reason } : {}),
    };
  },
});

async function runToEnd(context: Ending): Promise<{ run: Run; authorisation?: object }> {
  const { tx, input } = context;
  if (input.result !== 'broken-off') return runToGoOn(context, input.runId);
  const run = await theRun(tx, input.runId);
  refuseEnded(run);
  return { run };
}

/** A run that ends without passing says why. */
function reasonOf({ input }: Ending): string | null {
  if (input.result === 'passed') return null;
  if (input.reason) return input.reason;
  throw new Problem('invalid-input', 'Say why it ends so', {}, [{ pointer: '/reason', detail: 'Say why' }]);
}
