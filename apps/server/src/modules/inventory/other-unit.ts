import { Problem } from '@hubwright/contracts/problems';

/** Throws `unit-differs` when a paper counts in another unit than the part is issued in: 40 metres are not 40 inches. */
export function refuseOtherUnit(part: { number: string; issueUnit: string }, unit: string | undefined): void {
  if (unit === undefined || unit === part.issueUnit) return;
  throw new Problem('unit-differs', `${part.number} is counted by the ${part.issueUnit}, not by the ${unit}`, {}, [
    { pointer: '/unit', detail: `Enter the quantity by the ${part.issueUnit}` },
  ]);
}
