import type { SheetDrawn } from '@hubwright/contracts/work-orders/sheet-drawn';
import type { EntryOf } from '@hubwright/contracts/work-orders/sheet-entries';
import type { JudgedSheet } from './sheet.ts';

type Angles = Extract<SheetDrawn, { kind: 'angles' }>;

/** What a signed sheet is drawn from, taken from what was signed; null for kinds without a picture. */
export function drawnOf({
  kind,
  spec,
  entry,
  verdict,
}: Pick<JudgedSheet, 'kind' | 'spec' | 'entry' | 'verdict'>): SheetDrawn | null {
  if (spec.kind === 'bake' || spec.kind === 'cure')
    return { kind: 'heat', asked: spec, points: (entry as EntryOf<'bake' | 'cure'>).chart };
  if (kind !== 'angles') return null;
  const { accepted } = verdict as { accepted: Pick<Angles, 'blades' | 'stops'> };
  const { readings } = entry as EntryOf<'angles'>;
  return { kind, blades: accepted.blades, stops: accepted.stops, readings };
}
