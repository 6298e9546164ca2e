import type { SheetSpec } from '@hubwright/contracts/manuals/sheets';
import { anglesFor, bladesOf } from '@hubwright/rules/angles';
import { limitsInWords, valuesAsked } from '@hubwright/rules/function-test';

/** Kinds whose values stand on paper line by line. */
export function isLined({ kind }: SheetSpec): boolean {
  return kind === 'angles' || kind === 'function-test';
}

/** What an open sheet asks to be read, line by line with its limits: what a bench without a screen fills in. Empty where it is no table. */
export function linesOnPaper(
  spec: SheetSpec | null,
  applicationId: string | null,
): { readonly name: string; readonly limits: string }[] {
  if (spec?.kind === 'function-test')
    return [
      ...(spec.leak ? cycledOnPaper(spec.leak) : []),
      ...valuesAsked(spec).map((value) => ({ name: value.name, limits: limitsInWords(value) })),
    ];
  if (spec?.kind !== 'angles') return [];
  const asked = anglesFor(spec, applicationId);
  if (!asked) return [{ name: 'No angle is set without the application', limits: 'ask the front desk' }];
  const held = `cycled on air, then read at ${asked.station.at} ${asked.station.unit}`;
  const stops = asked.stops.flatMap(({ stop, low, high, spread }) => [
    ...bladesOf(asked.blades).map((blade) => ({ name: `blade ${blade}, ${stop} stop`, limits: `${low}° to ${high}°` })),
    ...(spread === undefined ? [] : [{ name: `spread at the ${stop} stop`, limits: `at most ${spread}°` }]),
  ]);
  return [{ name: held, limits: `${asked.cycles} times at least` }, ...stops];
}

function cycledOnPaper({ media, cycles }: { readonly media: readonly string[]; readonly cycles: number }) {
  return [
    { name: 'tested with', limits: media.join(' or ') },
    { name: 'cycled under pressure', limits: `${cycles} times at least` },
  ];
}
