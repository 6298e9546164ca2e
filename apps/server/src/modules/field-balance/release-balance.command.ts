import { fieldBalanceOperations } from '@hubwright/contracts/field-balance/operations';
import { Problem } from '@hubwright/contracts/problems';
import { defineCommand } from '../../platform/command/command.ts';
import { found } from '../../platform/command/version.ts';
import { requireAuthorisation } from '../people/public.ts';
import { refuseInDoubt } from './doubts.ts';
import { balanceLock, refuseUnless, stepOn, theBalance } from './field-balance.ts';
import { writeFieldSignature } from './field-signature.ts';
import { type BalancedContent, logEntry } from './signed-balance.ts';
import { supervisorOf } from './supervised.ts';

const operation = fieldBalanceOperations.releaseFieldBalance;

/** The approval for return to service of this balance alone; no work order of the shop waits for it or is changed by it. */
export const releaseBalance = defineCommand(operation, {
  locks: (input) => [balanceLock(input)],
  async execute(context) {
    const { tx, input, actor, today } = context;
    const balance = await theBalance(context, input.fieldBalanceId);
    refuseUnless(balance, ['balanced']);
    refuseInDoubt(balance);
    const need = { process: 'return-to-service', level: 'approve', today } as const;
    const authorisation = await requireAuthorisation(tx, actor, need);
    const signed = found(
      balance.signatures.find(({ kind }) => kind === 'balanced'),
      'The signed balance',
    );
    const shop = await tx.shopProfile.findUniqueOrThrow({ where: { id: 1 } });
    const signers = [signed.personId, supervisorOf(balance, signed)];
    if (signers.includes(actor.personId) && !shop.inspectOwnWork.includes('return-to-service'))
      throw new Problem('own-inspection', `You signed the balance of ${balance.number}; someone else releases it`);
    const entry = logEntry(signed.content as unknown as BalancedContent);
    const content = { number: balance.number, logEntry: entry, balanced: signed.contentHash };
    const meaning = operation.signs ?? '';
    const { contentHash } = await writeFieldSignature(context, {
      balance,
      kind: 'released',
      meaning,
      content,
      authorisation,
    });
    const { version, subject } = await stepOn(tx, balance, { state: 'released' });
    return {
      reply: { id: balance.id, version, logEntry: entry },
      subjects: [subject, { kind: 'unit', id: balance.unitId }],
      authorisation: { ...authorisation },
      facts: { ...content, contentHash },
    };
  },
});
