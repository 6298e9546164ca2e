import type { SheetOf, SheetSpec } from '@hubwright/contracts/manuals/sheets';
import type { SheetEntry } from '@hubwright/contracts/work-orders/sheet-entries';
import { usualCharge, usualFit, usualTorque } from './usual-build-sheets.ts';

/** A sheet as it usually is, good; a bake needs hours of its own and is entered by whoever tells its story. */
export function usualSheet(spec: SheetSpec | null): { sheet?: SheetEntry } {
  if (spec?.kind === 'torque') return { sheet: usualTorque(spec) };
  if (spec?.kind === 'charge') return { sheet: usualCharge(spec) };
  if (spec?.kind === 'fit') return { sheet: usualFit(spec) };
  if (spec?.kind === 'static-balance') return { sheet: balanced(spec) };
  if (spec?.kind !== 'eddy-current') return {};
  const { frequency, notchDepth } = spec;
  const set = { probe: 'EP-12', frequency: frequency.low, gain: '42', standardSerial: 'RS-07', notchDepth };
  return { sheet: { kind: 'eddy-current', ...set, before: '80', after: '79' } };
}

/** Light enough on both sides without a weight. */
function balanced({ kind }: SheetOf<'static-balance'>): SheetEntry {
  const light = { weight: '4', radius: '5' };
  const readings = { vertical: { heavy: 'right', ...light }, horizontal: { heavy: 'opposite', ...light } } as const;
  return { kind, before: readings, found: [], placed: [], after: readings };
}
