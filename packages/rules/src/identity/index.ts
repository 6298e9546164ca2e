import { RuleError } from '../errors/index.ts';

/** A serial as it is kept: trimmed, upper case, inner space collapsed, leading zeros kept. */
export function normaliseSerial(text: string): string {
  const serial = text.trim().replaceAll(/\s+/g, ' ').toUpperCase();
  if (serial === '') throw new RuleError('empty-serial', 'A serial cannot be empty', 'serial');
  return serial;
}
