import { fieldBalanceOperations } from '@hubwright/contracts/field-balance/operations';
import { Problem } from '@hubwright/contracts/problems';
import { defineCommand } from '../../platform/command/command.ts';
import { instrumentFor } from '../work-orders/public.ts';
import { refuseInDoubt } from './doubts.ts';
import { balanceLock, refuseUnless, stepOn, theBalance } from './field-balance.ts';
import { aboveLimit, lastRun } from './judged.ts';
import { balancedContent } from './signed-balance.ts';
import { maySign, writeSupervised } from './supervised.ts';

const operation = fieldBalanceOperations.signFieldBalance;

/** Signed by readings, not by computation: the last run was made with the weights as they stand and is within every limit. */
export const signBalance = defineCommand(operation, {
  locks: (input) => [balanceLock(input)],
  async execute(context) {
    const { tx, input, today } = context;
    const balance = await theBalance(context, input.fieldBalanceId);
    refuseUnless(balance, ['runs', 'weights-fitted']);
    const authorised = await maySign(context, input.supervisorId);
    const last = lastRun(balance);
    if (!last) throw new Problem('not-measured-since', `${balance.number}: run again with the weights as they stand`);
    const above = aboveLimit(balance, last);
    if (above.length > 0) throw new Problem('above-limit', above.join('; '), { above });
    refuseInDoubt(balance);
    const content = balancedContent(balance, last, input.remarks);
    const instrumentId = content.instrument.id;
    await instrumentFor(tx, { kind: 'vibration-analyser', instrumentId, day: today });
    const meaning = operation.signs ?? '';
    const signed = { balance, kind: 'balanced', meaning, content, instrumentId } as const;
    const { contentHash } = await writeSupervised(context, signed, authorised);
    const { version, subject } = await stepOn(tx, balance, { state: 'balanced' });
    return {
      reply: { id: balance.id, version },
      subjects: [subject],
      authorisation: { ...authorised.authorisation },
      facts: { ...content, contentHash },
    };
  },
});
