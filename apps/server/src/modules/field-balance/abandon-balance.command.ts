import { fieldBalanceOperations } from '@hubwright/contracts/field-balance/operations';
import { Problem } from '@hubwright/contracts/problems';
import { defineCommand } from '../../platform/command/command.ts';
import { balanceLock, refuseUnless, stepOn, theBalance } from './field-balance.ts';
import { ownOf, standingOf } from './weights.ts';

export const abandonBalance = defineCommand(fieldBalanceOperations.abandonFieldBalance, {
  locks: (input) => [balanceLock(input)],
  async execute(context) {
    const { tx, input } = context;
    const balance = await theBalance(context, input.fieldBalanceId);
    refuseUnless(balance, ['planned', 'set-up', 'runs', 'weights-fitted']);
    const own = ownOf(standingOf(balance));
    if (own.length > 0)
      throw new Problem(
        'weights-standing',
        `${balance.number} has weights in ${own.map(({ place }) => place).join(', ')}`,
      );
    const { version, subject } = await stepOn(tx, balance, { state: 'abandoned', abandoned: input.reason });
    return {
      reply: { id: balance.id, version },
      subjects: [subject],
      facts: { number: balance.number },
      reason: input.reason,
    };
  },
});
