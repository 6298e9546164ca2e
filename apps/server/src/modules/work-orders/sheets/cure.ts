import type { SheetEntry } from '@hubwright/contracts/work-orders/sheet-entries';
import { judgeCure, sayCure } from '@hubwright/rules/cure';
import { outTimesAt } from '../../inventory/public.ts';
import type { SignedStep, Signing } from '../step-signing.ts';
import { byRule, type Judge, sheetWrong } from './judge.ts';

/** When a cure began by its chart: what its material is judged by. Undefined for any other work. */
export function curedFrom({ sheet }: { sheet?: SheetEntry | undefined }): Date | undefined {
  const first = sheet?.kind === 'cure' ? sheet.chart[0] : undefined;
  return first && new Date(first.at);
}

/**
 * A cure judged by its chart, and by the lots laid up for it: those of the steps since the last cure and its own, with the time each
 * had been out of the freezer when it began. Throws `sheet-wrong` for a chart that cannot be read or is that of another cure.
 */
export const judgeCureSheet: Judge<'cure'> = async (context, { step, spec, entry, lotIds }) => {
  const chart = entry.chart.map(({ at, temperature, vacuum }) => ({
    ...{ at: Date.parse(at), temperature: Number(temperature) },
    ...(vacuum === undefined ? {} : { vacuum: Number(vacuum) }),
  }));
  const [startedAt, endedAt] = [chart[0]?.at ?? 0, chart.at(-1)?.at ?? 0];
  const laidUp = await laidUpBefore(context, step);
  if (Math.max(...chart.map(({ at }) => at)) > context.now.getTime())
    throw sheetWrong('The chart goes on into the future: sign the cure once it has ended', '/chart');
  if (laidUp.at && endedAt <= laidUp.at.getTime())
    throw sheetWrong(`The chart ends before “${laidUp.title}” was done: it is that of another cure`, '/chart');
  const materials = await outTimesAt(context.tx, [...laidUp.lotIds, ...lotIds], new Date(startedAt));
  const cure = { chart, spec: specOf(spec), materials, unitChecked: entry.unitChecked };
  const verdict = byRule(() => judgeCure(cure), '/chart');
  return { said: sayCure({ startedAt, endedAt }, verdict), reasons: verdict.reasons, verdict };
};

function specOf({ vacuum, ...spec }: Parameters<Judge<'cure'>>[1]['spec']) {
  const { low, high, heatUpMost, coolDownMost, coolTo } = spec;
  return {
    ...spec,
    ...{ low: Number(low), high: Number(high), heatUpMost: Number(heatUpMost), coolDownMost: Number(coolDownMost) },
    coolTo: Number(coolTo),
    ...(vacuum ? { vacuum: { ...vacuum, least: Number(vacuum.least) } } : {}),
  };
}

/** Lots named by the steps before it, back to the last cure, and when the last of them was done. */
async function laidUpBefore({ tx }: Signing, { travelerId, sequence }: SignedStep) {
  const before = await tx.travelerStep.findMany({
    where: { travelerId, sequence: { lt: sequence }, state: 'signed' },
    orderBy: { sequence: 'desc' },
    include: {
      signOffs: { where: { result: 'pass', countersignsId: null }, orderBy: { signedAt: 'desc' }, take: 1 },
    },
  });
  const last = before.findIndex(({ sheet }) => (sheet as { kind?: string } | null)?.kind === 'cure');
  const used = (last < 0 ? before : before.slice(0, last)).flatMap(({ title, signOffs: [signOff] }) =>
    signOff && signOff.lotIds.length > 0 ? [{ title, at: signOff.performedAt, lotIds: signOff.lotIds }] : [],
  );
  return { lotIds: used.flatMap(({ lotIds }) => lotIds), at: used[0]?.at, title: used[0]?.title };
}
