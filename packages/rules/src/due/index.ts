export type { DueLimit, MeterReading, NextDueInput } from './due-input.ts';
export { type LifeLimit, type LifeUsed, lifeVerdict } from './life-limit.ts';
export { type NextDue, nextDue } from './next-due.ts';
