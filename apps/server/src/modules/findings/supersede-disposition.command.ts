import { findingOperations } from '@hubwright/contracts/findings/operations';
import { Problem } from '@hubwright/contracts/problems';
import { defineCommand } from '../../platform/command/command.ts';
import { decidableFinding, decisionLocks } from './decidable.ts';
import { decide, inspectorOf } from './decide.ts';
import { withdrawDecision } from './withdraw-decision.ts';

const operation = findingOperations.supersedeDisposition;

/** A disposition is never edited: a newer signature takes its place and says why, and what the old one asked for is taken back. */
export const supersedeDisposition = defineCommand(operation, {
  locks: (input, tx) => decisionLocks(tx, input.findingId),
  async execute(context) {
    const { tx, input, expectedVersion } = context;
    const finding = await decidableFinding(tx, input.findingId, expectedVersion);
    const { number, disposition, signOffId } = finding;
    if (!disposition || !signOffId) throw new Problem('finding-undecided', `${number} has no disposition yet`);
    await inspectorOf(context);
    const { subjects } = await withdrawDecision(context, { ...finding, disposition, signOffId }, input.reason);
    // Steps and places are others now.
    const asItIs = await decidableFinding(tx, finding.id, finding.version);
    const meaning = `${operation.signs ?? ''}: ${input.reason}`;
    const made = await decide(context, asItIs, { ...input, meaning, supersedesId: signOffId });
    return {
      ...made,
      subjects: [...made.subjects, ...subjects],
      facts: { ...made.facts, before: disposition },
      reason: input.reason,
    };
  },
});
