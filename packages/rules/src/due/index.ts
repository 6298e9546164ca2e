export type { DueLimit, MeterReading, NextDueInput } from './due-input.ts';
export { type DueByLimit, type FirstLimit, firstLimit } from './first-limit.ts';
export { type LifeLimit, type LifeUsed, lifeVerdict } from './life-limit.ts';
export { type NextDue, nextDue } from './next-due.ts';
export { type SealDue, type SealLife, sealDue } from './seal-life.ts';
export { type StorageCount, type StoragePeriod, type StorageRule, storageCount } from './storage.ts';
export { type RulesInForce, rulesInForce, type TboCondition, type TboUnit } from './tbo-conditions.ts';
