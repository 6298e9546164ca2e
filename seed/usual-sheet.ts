import type { SheetOf, SheetSpec } from '@hubwright/contracts/manuals/sheets';
import type { EntryOf, SheetEntry } from '@hubwright/contracts/work-orders/sheet-entries';
import { anglesFor, bladesOf } from '@hubwright/rules/angles';
import { valuesAsked } from '@hubwright/rules/function-test';
import { usualCharge, usualFit, usualTorque } from './usual-build-sheets.ts';

interface Work {
  readonly applicationId: string | null;
  readonly at: Date;
}

/** A sheet as it usually is, good, for work that ends at a moment; a bake needs hours of its own and is entered by whoever tells its story. */
export function usualSheet(spec: SheetSpec | null, work: Work): { sheet?: SheetEntry } {
  const sheet = spec && entryOf(spec, work);
  return sheet ? { sheet } : {};
}

function entryOf(spec: SheetSpec, { applicationId, at }: Work): SheetEntry | undefined {
  if (spec.kind === 'cure') return usualCure(spec, at);
  if (spec.kind === 'angles') return usualAngles(spec, applicationId);
  if (spec.kind === 'function-test') return usualTest(spec);
  if (spec.kind === 'torque') return usualTorque(spec);
  if (spec.kind === 'charge') return usualCharge(spec);
  if (spec.kind === 'fit') return usualFit(spec);
  if (spec.kind === 'static-balance') return balanced(spec);
  if (spec.kind !== 'eddy-current') return undefined;
  const { frequency, notchDepth } = spec;
  const set = { probe: 'EP-12', frequency: frequency.low, gain: '42', standardSerial: 'RS-07', notchDepth };
  return { kind: 'eddy-current', ...set, before: '80', after: '79' };
}

/** The middle of each band, the blades a few hundredths of a degree apart as they are. */
function usualAngles(spec: SheetOf<'angles'>, applicationId: string | null): SheetEntry | undefined {
  const asked = anglesFor(spec, applicationId);
  if (!asked || applicationId === null) return undefined;
  const readings = asked.stops.flatMap(({ stop, low, high }) =>
    bladesOf(asked.blades).map((blade) => ({
      ...{ blade, stop },
      angle: ((Number(low) + Number(high)) / 2 + ((blade * 3) % 5) * 0.02).toFixed(2),
    })),
  );
  return { kind: 'angles', applicationId, cycles: asked.cycles, readings };
}

/** Well inside every limit. */
function usualTest(spec: SheetOf<'function-test'>): SheetEntry {
  const values = valuesAsked(spec).map(({ path, low, high }) => ({ of: path, value: between(low, high) }));
  const [medium] = spec.leak?.media ?? [];
  return { kind: 'function-test', ...(spec.leak && medium ? { medium, cycles: spec.leak.cycles } : {}), values };
}

function between(low: string | undefined, high: string | undefined): string {
  const decimals = Math.max(...[low, high].map((text) => text?.split('.')[1]?.length ?? 0));
  if (high === undefined) return (Number(low) * 1.1).toFixed(decimals);
  if (low === undefined) return (Number(high) * 0.4).toFixed(decimals);
  return ((Number(low) + Number(high)) / 2).toFixed(decimals);
}

/** Light enough on both sides without a weight. */
function balanced({ kind }: SheetOf<'static-balance'>): SheetEntry {
  const light = { weight: '4', radius: '5' };
  const readings = { vertical: { heavy: 'right', ...light }, horizontal: { heavy: 'opposite', ...light } } as const;
  return { kind, before: readings, found: [], placed: [], after: readings };
}

/** Heated and cooled at four fifths of what is allowed, held ten minutes longer than asked. */
function usualCure(spec: SheetOf<'cure'>, end: Date): EntryOf<'cure'> {
  const [room, middle, out] = [70, (Number(spec.low) + Number(spec.high)) / 2, Number(spec.coolTo) - 10];
  const up = Math.ceil((middle - room) / (0.8 * Number(spec.heatUpMost)));
  const down = Math.ceil((middle - out) / (0.8 * Number(spec.coolDownMost)));
  const hold = spec.minimumMinutes + 10;
  const start = end.getTime() - (up + hold + down) * 60_000;
  const vacuum = spec.vacuum ? { vacuum: String(Number(spec.vacuum.least) + 3) } : {};
  const points = [
    [0, room],
    [up, middle],
    [up + hold, middle],
    [up + hold + down, out],
  ] as const;
  return {
    kind: 'cure',
    chart: points.map(([minutes, temperature]) => ({
      ...{ at: new Date(start + minutes * 60_000).toISOString(), temperature: String(temperature) },
      ...vacuum,
    })),
  };
}
