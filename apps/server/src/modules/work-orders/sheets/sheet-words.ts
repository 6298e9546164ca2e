import type { SheetKind, SheetOf, SheetSpec } from '@hubwright/contracts/manuals/sheets';

const words: { readonly [K in SheetKind]: (spec: SheetOf<K>) => string } = {
  bake: ({ startWithinMinutes, low, high, unit, minimumMinutes, dips }) =>
    `baked within ${startWithinMinutes} min of plating, ${minimumMinutes} min at ${low} to ${high} ${unit}, dips ${dips}`,
  'governor-test': () => 'tested on the governor bench by the program of the application',
  'eddy-current': ({ frequency, notchDepth, unit, signal, drift }) =>
    `eddy current at ${frequency.low} to ${frequency.high} ${frequency.unit}, notch ${notchDepth} ${unit}, signal ${signal.low} to ${signal.high} %, drift ${drift} %`,
};

/** What a sheet asks for, in words: what two revisions are compared by. */
export function sheetWords(spec: SheetSpec): string {
  return (words[spec.kind] as (spec: SheetSpec) => string)(spec);
}
