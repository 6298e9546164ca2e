export { advance, refuseHeld } from './advance.ts';
export { contentHashOf, type SignOffToWrite, writeSignOff } from './sign-off.ts';
