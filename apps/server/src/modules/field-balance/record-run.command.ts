import { fieldBalanceOperations } from '@hubwright/contracts/field-balance/operations';
import { Problem } from '@hubwright/contracts/problems';
import { defineCommand } from '../../platform/command/command.ts';
import { surprisesOf } from './answer.ts';
import {
  asRun,
  balanceLock,
  dataOf,
  effectiveRuns,
  refuseUnless,
  setUpOf,
  stepOn,
  theBalance,
} from './field-balance.ts';
import { corrected, refuseOutOfTurn, refuseReadings, refuseTrial } from './run-checks.ts';
import { mayBalance } from './supervised.ts';
import { ownOf, standingOf } from './weights.ts';

/** Readings are kept as they were read; a wrong one is put right by a newer row that names it. */
export const recordRun = defineCommand(fieldBalanceOperations.recordFieldRun, {
  locks: (input) => [balanceLock(input)],
  async execute(context) {
    const { tx, input, actor, now, entryId, newId } = context;
    const { kind, readings } = input;
    const balance = await theBalance(context, input.fieldBalanceId);
    refuseUnless(balance, ['set-up', 'runs', 'weights-fitted', 'balanced']);
    const authorisation = await mayBalance(context, balance);
    const setUp = setUpOf(balance);
    if (!balance.spec || !setUp) throw new Problem('not-set-up', `${balance.number} has no signed sheet`);
    const data = dataOf(balance.spec);
    const wrong = corrected(context, balance);
    const before = effectiveRuns(balance).filter(({ row }) => row.id !== wrong?.row.id);
    const about = { balance, data, sheet: setUp.sheet, before };
    refuseOutOfTurn(context, about, wrong);
    refuseReadings(context, about);
    const weights = wrong?.weights ?? ownOf(standingOf(balance));
    const trial = kind === 'trial' ? (input.trial ?? null) : null;
    refuseTrial(context, about, { readings, trial, weights });
    const id = newId();
    const read = { kind, readings, weights: weights as object[], ...(trial ? { trial } : {}) };
    const recorded = await tx.fieldRun.create({
      data: {
        ...{ id, fieldBalanceId: balance.id, setUpId: setUp.signature.id, sequence: balance.runs.length + 1, ...read },
        ...(wrong ? { supersedesId: wrong.row.id, reason: input.reason ?? '' } : {}),
        ...{ recordedBy: actor.personId, recordedAt: now, entryId },
      },
    });
    const surprising = surprisesOf({ data, sheet: setUp.sheet }, [...before, asRun(recorded)]).at(-1) ?? false;
    const { version, subject } = await stepOn(tx, balance, {
      state: wrong && balance.state === 'weights-fitted' ? balance.state : 'runs',
    });
    return {
      reply: { id: balance.id, version, runId: id, surprising },
      subjects: [subject],
      authorisation: { ...authorisation },
      facts: { number: balance.number, ...read, surprising },
      ...(wrong ? { reason: input.reason ?? '' } : {}),
    };
  },
});
