import { kitsOperations } from '@hubwright/contracts/kits/operations';
import type { Reply } from '@hubwright/contracts/operation';
import { queryFor } from '../../api/query.ts';
import type { PropellerPosition } from '../../ui/pictures/PropellerFront.tsx';
import type { State } from '../../ui/StateMark.tsx';

export const buildSheetQuery = (workOrderId: string) => queryFor(kitsOperations.buildSheet, { workOrderId });
export type BuildSheet = Reply<typeof kitsOperations.buildSheet>;
export type SheetLine = BuildSheet['positions'][number];
export type Placed = BuildSheet['tray'][number] | BuildSheet['rack'][number];

/** How one line stands: all there, some there, nothing there, or nothing needed. */
export function standingOf(line: SheetLine): { state: State; word: string } {
  if (line.missing === 0) {
    const from = line.lots.some((lot) => lot.from === 'reused') ? 'reused' : 'new';
    return line.installed === 0 ? { state: 'note', word: 'none needed' } : { state: 'have', word: `in, ${from}` };
  }
  return line.installed > 0 ? { state: 'waiting', word: `${line.missing} to go` } : { state: 'short', word: 'empty' };
}

/** Positions grouped as the drawing shows them: `blade 1`, `blade 2`, …, and everything else at the hub. */
export function positionGroups(sheet: BuildSheet): { key: string; lines: SheetLine[] }[] {
  const groups = new Map<string, SheetLine[]>();
  for (const line of sheet.positions) {
    const blade = /^blade[ -](\d+)/.exec(line.position)?.[1];
    const key = blade ? `blade ${blade}` : 'hub';
    groups.set(key, [...(groups.get(key) ?? []), line]);
  }
  return [...groups].map(([key, lines]) => ({ key, lines }));
}

/** One group as a position of the drawing: filled when all of it is in. */
export function drawn(key: string, lines: readonly SheetLine[]): PropellerPosition {
  const missing = lines.reduce((sum, line) => sum + line.missing, 0);
  const installed = lines.reduce((sum, line) => sum + line.installed, 0);
  const state: State = missing === 0 ? 'have' : installed > 0 ? 'waiting' : 'open';
  return {
    key,
    label: key === 'hub' ? 'hub' : key.replace('blade ', ''),
    state,
    words: missing === 0 ? 'all in' : `${installed} in, ${missing} to go`,
  };
}

/** What a scanned lot can do here: go in from the tray, go back in from the rack, or neither and why. */
export function scanPlan(
  sheet: BuildSheet,
  code: string,
): { kind: 'install' | 'reuse'; kitId: string; line: SheetLine } | { kind: 'no'; why: string } {
  const inTray = sheet.tray.find((lot) => lot.lotCode === code);
  const inRack = sheet.rack.find((lot) => lot.lotCode === code);
  const placed = inTray ?? inRack;
  if (!placed) return { kind: 'no', why: `${code} is neither in this unit’s tray nor in its rack` };
  const line =
    sheet.positions.find((each) => each.lineId === placed.lineId && each.missing > 0) ??
    sheet.positions.find((each) => each.part.id === placed.part.id && each.missing > 0);
  if (!line) return { kind: 'no', why: `No position still needs ${placed.part.number}` };
  return { kind: inTray ? 'install' : 'reuse', kitId: line.kitId, line };
}
