import type { SheetDrawn } from '@hubwright/contracts/work-orders/sheet-drawn';
import type { EntryOf } from '@hubwright/contracts/work-orders/sheet-entries';
import type { JudgedSheet } from './sheet.ts';

/** What a signed sheet is drawn from, taken from what was signed; null for kinds without a picture. */
export function drawnOf({ kind, entry, verdict }: Pick<JudgedSheet, 'kind' | 'entry' | 'verdict'>): SheetDrawn | null {
  if (kind !== 'angles') return null;
  const { accepted } = verdict as { accepted: Pick<SheetDrawn, 'blades' | 'stops'> };
  const { readings } = entry as EntryOf<'angles'>;
  return { kind, blades: accepted.blades, stops: accepted.stops, readings };
}
