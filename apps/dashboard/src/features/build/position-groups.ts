import type { PropellerPosition } from '../../ui/pictures/PropellerFront.tsx';
import type { State } from '../../ui/StateMark.tsx';
import type { BuildSheet, SheetLine } from './build-sheet.ts';

/** Positions that belong together at the bench: `blade 1`, `hub`, `pitch change`, `spinner and mounting`, `as needed`. */
export interface PositionGroup {
  readonly key: string;
  readonly lines: readonly SheetLine[];
}

/** By the first words the kit lists name positions with; what fits none belongs to the hub. */
const families: readonly [RegExp, string][] = [
  [/^(piston|cylinder|pitch|fork|low pitch|feather|start lock)/, 'pitch change'],
  [/^(spinner|mounting|static balance)/, 'spinner and mounting'],
];
const order = ['hub', 'pitch change', 'spinner and mounting', 'body', 'as needed'];

function groupOf(line: SheetLine, hasBlades: boolean): string {
  const blade = /^blade[ -](\d+)/.exec(line.position)?.[1];
  if (blade) return `blade ${blade}`;
  if (line.minimum !== null) return 'as needed';
  if (!hasBlades) return 'body';
  return families.find(([words]) => words.test(line.position))?.[1] ?? 'hub';
}

/** Blades in the order of the hub's marks, then hub, pitch change, spinner; a governor's parts are its body. */
export function positionGroups(sheet: BuildSheet): PositionGroup[] {
  const hasBlades = sheet.positions.some((line) => line.position.startsWith('blade'));
  const groups = new Map<string, SheetLine[]>();
  for (const line of sheet.positions) {
    const key = groupOf(line, hasBlades);
    groups.set(key, [...(groups.get(key) ?? []), line]);
  }
  const place = (key: string) => (key.startsWith('blade') ? -1 : order.indexOf(key));
  return [...groups]
    .map(([key, lines]) => ({ key, lines }))
    .sort((a, b) => place(a.key) - place(b.key) || a.key.localeCompare(b.key, 'en', { numeric: true }));
}

/** How a group stands: positions filled, positions still empty or not full. */
export function standingOfGroup(lines: readonly SheetLine[]): { state: State; words: string; toGo: number } {
  const toGo = lines.filter((line) => line.missing > 0).length;
  const filled = lines.filter((line) => line.missing === 0 && line.installed > 0).length;
  const begun = lines.some((line) => line.installed > 0);
  if (lines.length === 0) return { state: 'note', words: 'nothing on the list', toGo };
  if (toGo === 0) return { state: 'have', words: 'all in', toGo };
  return { state: begun ? 'waiting' : 'open', words: `${filled} in, ${toGo} to go`, toGo };
}

/** One group as a position of the drawing: filled when all of it is in. */
export function drawn(key: string, lines: readonly SheetLine[]): PropellerPosition {
  const { state, words } = standingOfGroup(lines);
  return { key, label: key.replace('blade ', ''), state, words };
}
