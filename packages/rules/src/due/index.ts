export type { DueLimit, MeterReading, NextDueInput } from './due-input.ts';
export { type NextDue, nextDue } from './next-due.ts';
