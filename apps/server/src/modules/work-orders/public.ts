export { advance, refuseHeld } from './advance.ts';
export { type ConsentGap, consentGap, workIsApproved } from './consent.ts';
export { liftHolds, writeHold } from './holds.ts';
export { preliminaryInspection, requireLookedAt } from './looked-at.ts';
export { contentHashOf, type SignOffToWrite, writeSignOff } from './sign-off.ts';
