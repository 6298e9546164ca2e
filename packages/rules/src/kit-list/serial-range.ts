import { RuleError } from '../errors/index.ts';

/**
 * Whether a serial lies in a manual's range, both ends included. Serials count by their trailing digits; what stands before
 * the digits must be the same as in the bound, so `QH1200` is not in a range of `QG` serials. A missing bound is open.
 *
 * Common practice, no source: makers print ranges as "QG1000 through QG1999" or "QG2000 and on".
 *
 * Errors: RuleError `bad-range` for a bound without digits, for bounds of two families, or for a range that ends before it begins.
 *
 * @example serialInRange('QG1042', { from: 'QG1000', to: 'QG1999' }) // true
 */
export function serialInRange(serial: string, range: { from?: string; to?: string }): boolean {
  const from = range.from === undefined ? undefined : bound(range.from, 'from');
  const to = range.to === undefined ? undefined : bound(range.to, 'to');
  if (from && to && from.family !== to.family)
    throw new RuleError('bad-range', `${range.from} and ${range.to} are not of one family of serials`, 'to');
  if (from && to && from.count > to.count)
    throw new RuleError('bad-range', `The range ends before it begins: ${range.from} to ${range.to}`, 'to');
  if (!from && !to) return true;
  const asked = split(serial);
  if (!asked || asked.family !== (from ?? to)?.family) return false;
  return (!from || asked.count >= from.count) && (!to || asked.count <= to.count);
}

function bound(text: string, path: string): { family: string; count: bigint } {
  const parts = split(text);
  if (!parts) throw new RuleError('bad-range', `A bound of a serial range ends in digits, ${text} does not`, path);
  return parts;
}

function split(text: string): { family: string; count: bigint } | undefined {
  const match = /^(.*?)(\d+)$/.exec(text.trim().toUpperCase());
  // A space or dash between letters and digits is a habit of writing, not another family.
  return match ? { family: (match[1] ?? '').replaceAll(/[\s-]+/g, ''), count: BigInt(match[2] ?? '0') } : undefined;
}
