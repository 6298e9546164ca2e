import { addDays } from '@hubwright/rules/dates';
import { shopToday } from '../../seed/index.ts';

/** A day counted from today as the invented shop counts days: in its own zone, which is behind UTC for part of each night. */
export function day(offset: number, at = new Date()): string {
  return addDays(shopToday(at), offset);
}
