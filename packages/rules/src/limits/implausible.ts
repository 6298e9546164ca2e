/** An inch is 25.4 mm (exact, NIST SP 811); anything this far off is another unit or a slip of the point, not a worn part. */
const farOff = 20;

/**
 * Why a reading cannot be one of this measure, or undefined. It may well be outside its limits: that is a finding. It cannot be
 * twenty times the limits or a twentieth of them, as inches read in millimetres are, nor negative where nothing below zero is
 * in question. A measure with an upper limit alone has readings near zero that are good. Limits and value in one unit, as entered.
 *
 * @example implausible(162.7, { low: 6.405 }) // 'twenty times its limits or more: is it in the unit of the manual?'
 */
export function implausible(
  value: number,
  { low, high }: { low?: number | undefined; high?: number | undefined },
): string | undefined {
  const most = Math.max(...[low, high].flatMap((limit) => (limit === undefined ? [] : [Math.abs(limit)])), 0);
  if (most > 0 && Math.abs(value) >= farOff * most)
    return 'twenty times its limits or more: is it in the unit of the manual?';
  if (low === undefined || low <= 0) return undefined;
  if (value < 0) return 'below zero';
  return value <= low / farOff ? 'a twentieth of its limit or less: is it in the unit of the manual?' : undefined;
}
