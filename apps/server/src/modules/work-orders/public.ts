export { type AdvancedWorkOrder, advance, refuseHeld } from './advance.ts';
export { bladeSetOf } from './blade-set.ts';
export { changedDocuments, documentSets } from './document-set.ts';
export { builtAgain, type PartAgain, partAgain, usedUpSeals } from './done-again.ts';
export { finishEvaluation } from './finish-evaluation.ts';
export { liftHolds, writeHold } from './holds.ts';
export { workOrderLocks } from './loads.ts';
export { buildLocks, openClosedBuild } from './open-closed-build.ts';
export { openReviews } from './open-reviews.ts';
export { type OverhaulsLeft, overhaulsLeft } from './overhauls-left.ts';
export { conditionOf } from './part-limits.ts';
export { routesByClass, stepOfRoute } from './raise-travelers.ts';
export { isGovernorTest } from './sheets/governor-sheet.ts';
export { insertSteps, type NewStep } from './splice-steps.ts';
export { plainTitle } from './step-again.ts';
export { blockOf, blockToSend } from './step-block.ts';
export {
  instrumentFor,
  performedAt,
  refuseInLoad,
  requireTurn,
  requireTurnToSend,
  type SignedStep,
  type Signing,
  stepLocks,
  stepToSign,
} from './step-signing.ts';
export { namedTraveler, withTraveler } from './traveler-named.ts';
export { type TurnRow, turnSql } from './turn.ts';
export { requireWorkOn } from './work-on.ts';
export { writeStepSignature } from './write-step-signature.ts';
