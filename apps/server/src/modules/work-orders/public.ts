export { type AdvancedWorkOrder, advance, refuseHeld } from './advance.ts';
export { finishEvaluation } from './finish-evaluation.ts';
export { liftHolds, writeHold } from './holds.ts';
export { routesByClass, stepOfRoute } from './raise-travelers.ts';
export { insertSteps, type NewStep } from './splice-steps.ts';
export { requireTurn, type SignedStep, stepLocks, stepToSign } from './step-signing.ts';
export { writeStepSignature } from './write-step-signature.ts';
