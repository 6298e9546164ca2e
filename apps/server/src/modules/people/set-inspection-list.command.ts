import { trainingOperations } from '@hubwright/contracts/people/training-operations';
import { Problem } from '@hubwright/contracts/problems';
import { type Context, defineCommand } from '../../platform/command/command.ts';
import { holdersOf } from './holders.ts';
import { shopSubjectId } from './shop-subject.ts';

const operation = trainingOperations.setInspectionList;

/** Names who may inspect a process. Whoever is named holds the authorisation today; losing it later they inspect no more. */
export const setInspectionList = defineCommand(operation, {
  locks: (input) => [`inspection-list:${input.process}`],
  async execute(context) {
    const { tx, input } = context;
    const { process, reason } = input;
    const personIds = [...new Set(input.personIds)];
    await refuseUnauthorised(context, personIds);
    const before = await tx.inspectionList.findUnique({ where: { process } });
    const version = (before?.version ?? 0) + 1;
    await tx.inspectionList.upsert({
      where: { process },
      create: { process, personIds, version },
      update: { personIds, version },
    });
    return {
      reply: { process, version },
      subjects: [{ kind: 'shop', id: shopSubjectId }],
      facts: { process, before: before?.personIds ?? [], after: personIds },
      reason,
    };
  },
});

async function refuseUnauthorised({ tx, input, today }: Context<typeof operation>, personIds: readonly string[]) {
  const { process } = input;
  const holders = await holdersOf(tx, { process, level: 'inspect', today });
  const able = new Set(holders.map(({ personId }) => personId));
  const wrong = personIds.findIndex((id) => !able.has(id));
  if (wrong < 0) return;
  const inspectors = holders.map(({ name }) => name);
  throw new Problem(
    'not-an-inspector',
    `Authorised to inspect “${process}”: ${inspectors.join(', ') || 'nobody'}`,
    { process, inspectors },
    [{ pointer: `/personIds/${wrong}`, detail: 'Not authorised to inspect it' }],
  );
}
