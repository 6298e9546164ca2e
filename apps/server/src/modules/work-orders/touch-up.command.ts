import { Problem } from '@hubwright/contracts/problems';
import { touchUpOperations } from '@hubwright/contracts/work-orders/touch-up-operations';
import { defineCommand } from '../../platform/command/command.ts';
import { found } from '../../platform/command/version.ts';
import { requireAuthorisation, writeSignOff } from '../people/public.ts';
import { refuseHeld } from './advance.ts';
import { balanceAgain } from './balance-again.ts';
import { buildLocks } from './open-closed-build.ts';

const operation = touchUpOperations.touchUp;
const underWork: readonly string[] = ['in-work', 'build', 'final-inspection'];

/** Paint weighs: what is touched up after the static balance is balanced again before anyone can release it. */
export const touchUp = defineCommand(operation, {
  locks: ({ workOrderId }, tx) => buildLocks(tx, [workOrderId]),
  async execute(context) {
    const { tx, input, actor, today, newId } = context;
    const workOrder = found(await tx.workOrder.findUnique({ where: { id: input.workOrderId } }), 'This work order');
    const { id, number, revisionId, stage } = workOrder;
    if (!underWork.includes(stage)) throw new Problem('wrong-state', `${number} is not under work`, { stage });
    const authorisation = await requireAuthorisation(tx, actor, { process: 'coating', level: 'perform', today });
    await refuseHeld(tx, workOrder);
    const { where, paint, reason } = input;
    const { id: signOffId } = await writeSignOff(context, {
      ...{
        workOrderId: id,
        subject: { kind: 'touch-up', id: newId() },
        meaning: operation.signs ?? '',
        result: 'pass',
      },
      ...{ authorisation, revisionId, content: { workOrder: number, where, paint, reason } },
    });
    const back = await balanceAgain(context, workOrder, 'touch-up');
    const data = { version: { increment: 1 } } as const;
    const now = await tx.workOrder.update({ where: { id }, data, select: { version: true, stage: true } });
    const again = back.flatMap(({ titles }) => titles);
    return {
      reply: { id, version: now.version, signOffId, stage: now.stage, again },
      subjects: [
        { kind: 'work-order', id, before: workOrder.version, after: now.version },
        ...back.map((one) => ({ kind: 'traveler', id: one.id, before: one.before, after: one.before + 1 })),
      ],
      authorisation: { ...authorisation },
      facts: { where, paint, stage: now.stage, again },
      reason,
    };
  },
});
