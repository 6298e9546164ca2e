import { findingOperations } from '@hubwright/contracts/findings/operations';
import { Problem } from '@hubwright/contracts/problems';
import { defineCommand } from '../../platform/command/command.ts';
import { decidableFinding, decisionLocks } from './decidable.ts';
import { decide } from './decide.ts';

const operation = findingOperations.disposeFinding;

/** The decision on a finding is a signature. It adds steps, parts and money, or ends the part's way. */
export const disposeFinding = defineCommand(operation, {
  locks: (input, tx) => decisionLocks(tx, input.findingId),
  async execute(context) {
    const { tx, input, expectedVersion } = context;
    const finding = await decidableFinding(tx, input.findingId, expectedVersion);
    const { number, disposition } = finding;
    if (disposition) throw new Problem('finding-decided', `${number} is decided: ${disposition}`);
    return decide(context, finding, { ...input, meaning: operation.signs ?? '' });
  },
});
