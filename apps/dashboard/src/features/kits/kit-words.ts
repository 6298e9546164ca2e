import type { LineStanding } from '@hubwright/contracts/kits/operations';
import { countOf } from '../../format/numbers.ts';
import type { State } from '../../ui/StateMark.tsx';
import { asksOf, type KitRow } from './kit-board.ts';

/** How a line stands, as shape and word. */
const standingMarks: Record<LineStanding, { state: State; word: string }> = {
  'not-needed': { state: 'open', word: 'from the unit itself' },
  installed: { state: 'passed', word: 'installed' },
  'in-tray': { state: 'passed', word: 'in the tray' },
  reserved: { state: 'have', word: 'have, promised' },
  have: { state: 'have', word: 'have' },
  'on-order': { state: 'on-order', word: 'on order' },
  late: { state: 'waiting', word: 'on order, late' },
  short: { state: 'short', word: 'short' },
};

/** How this line stands; one that a later revision dropped asks for nothing. */
export function standingMark(line: { standing: LineStanding; quantity: number }): { state: State; word: string } {
  if (line.quantity === 0 && line.standing === 'not-needed') return { state: 'open', word: 'listed no more' };
  return standingMarks[line.standing];
}

/** The state of a whole kit in a few words. */
export function kitMark(kit: KitRow): { state: State; word: string } {
  switch (asksOf(kit)) {
    case 'order':
      return { state: 'short', word: `${countOf(kit.short, 'line')} short` };
    case 'chase':
      return { state: 'waiting', word: `${countOf(kit.late, 'line')} late` };
    case 'pull':
      return { state: 'have', word: kit.issued === 0 ? 'all here: pull now' : 'the rest is here' };
    case 'done':
      return { state: 'passed', word: 'all pulled' };
    case 'wait':
      return { state: 'on-order', word: `${countOf(kit.onOrder, 'line')} on order` };
  }
}

/** The bar of a kit in words, for those who cannot see it. */
export function barWords(kit: KitRow): string {
  const parts = [
    [kit.issued, 'pulled'],
    [kit.have, 'have'],
    [kit.onOrder, 'on order'],
    [kit.late, 'on order but late'],
    [kit.short, 'short'],
  ] as const;
  const said = parts.filter(([lines]) => lines > 0).map(([lines, word]) => `${lines} ${word}`);
  return `${kit.code}: of ${countOf(kit.lines, 'line')}, ${said.join(', ')}`;
}
