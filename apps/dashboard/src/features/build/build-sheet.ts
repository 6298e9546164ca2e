import { kitsOperations } from '@hubwright/contracts/kits/operations';
import type { Reply } from '@hubwright/contracts/operation';
import { queryFor } from '../../api/query.ts';
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

/** How an old part in the rack stands: it may go back, must be inspected first, or is replaced by a new one in any case. */
export function rackStanding(sheet: BuildSheet, lot: Placed): 'may-go-back' | 'not-inspected' | 'always-new' {
  if (lot.state === 'accepted') return 'may-go-back';
  const line = sheet.positions.find((each) => each.lineId === lot.lineId);
  return line?.source === 'new' ? 'always-new' : 'not-inspected';
}

/** What a scanned lot can do here: go in from the tray, go back in from the rack, or neither and why. Positions of the chosen group come first. */
export function scanPlan(
  sheet: BuildSheet,
  { code, chosen }: { code: string; chosen: readonly SheetLine[] },
): { kind: 'install' | 'reuse'; kitId: string; line: SheetLine } | { kind: 'no'; why: string } {
  const inTray = sheet.tray.filter((lot) => lot.lotCode === code);
  const kind = inTray.length > 0 ? 'install' : 'reuse';
  const placed = kind === 'install' ? inTray : sheet.rack.filter((lot) => lot.lotCode === code);
  const [first] = placed;
  if (!first) return { kind: 'no', why: `${code} is neither in this unit’s tray nor in its rack` };
  const open = [...chosen, ...sheet.positions].filter((line) => takesMore(line, kind));
  const line =
    open.find((each) => placed.some((lot) => lot.lineId === each.lineId)) ??
    open.find((each) => each.part.id === first.part.id);
  if (!line) return { kind: 'no', why: `No position still needs ${first.part.number}` };
  return { kind, kitId: line.kitId, line };
}

/** As-needed lines take new material up to their most, even when their least is in. */
export function takesMore(line: SheetLine, kind: 'install' | 'reuse'): boolean {
  if (line.missing > 0) return true;
  return kind === 'install' && line.minimum !== null && line.installed < line.required;
}
