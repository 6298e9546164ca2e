import type { Doubt, ItemTimes } from '@hubwright/rules/times';

const names = { sinceNew: 'since new', sinceOverhaul: 'since overhaul' } as const;
const hours = (tenths: number) => `${(tenths / 10).toFixed(1)} h`;

/** Why a total is unknown, each reason in a sentence a person can act on. */
export function unknownWords(times: ItemTimes, asOf: string): string[] {
  const reasons: string[] = [];
  for (const which of ['sinceNew', 'sinceOverhaul'] as const) {
    const { start, restartedOn } = times[which];
    if (restartedOn !== null) continue;
    if (start === null) reasons.push(`No paper on record by ${asOf} says its time ${names[which]}.`);
    else if (start.tenths === 'unknown')
      reasons.push(`Time ${names[which]} was not known on ${start.date} (${start.basis}).`);
  }
  for (const piece of times.pieces) {
    if (piece.flown.tenths !== 'unknown' || !(piece.counts.sinceNew || piece.counts.sinceOverhaul)) continue;
    const during = `from ${piece.from}${piece.to ? ` to ${piece.to}` : ' on'}`;
    if (piece.meterNo === 0)
      reasons.push(`Nobody reported whether and where it flew ${during}: report the installation.`);
    else if (piece.fromTenths === 'unknown') reasons.push(`What the meter showed on ${piece.from} is not known.`);
    else reasons.push(`What the meter showed on ${piece.to ?? asOf} is not known.`);
  }
  return [...new Set(reasons)];
}

export function doubtWords({ date, which, saidTenths, computed, basis }: Doubt): string {
  const ours = computed.tenths === 'unknown' ? `at least ${hours(computed.atLeastTenths)}` : hours(computed.tenths);
  return `On ${date} it was said to have ${hours(saidTenths)} ${names[which]} (${basis}); what is on record makes it ${ours}. Ask which is right.`;
}
