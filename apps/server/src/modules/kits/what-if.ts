import { partWords } from '@hubwright/contracts/inventory/quantity';
import type { LineCover } from './line-cover.ts';

export interface Effect {
  readonly kitId: string;
  readonly kitCode: string;
  readonly sentence: string;
}

/** What a line waits for: the day it is whole, or never. Promised pieces are there. */
function wholeOn({ short, coveredOn }: LineCover): string {
  return short > 0 ? '9999-12-31' : coveredOn === null || coveredOn === 'never' ? '' : coveredOn;
}

function isBad(line: LineCover): boolean {
  return line.short > 0 || line.late > 0;
}

/** Lines that are helped and lines that are harmed, each in a sentence; what stays in time either way is neither. */
export function effects(
  before: readonly LineCover[],
  after: readonly LineCover[],
): { helped: Effect[]; harmed: Effect[] } {
  const then = new Map(after.map((line) => [line.row.lineId, line]));
  const helped: Effect[] = [];
  const harmed: Effect[] = [];
  for (const line of before) {
    const changed = then.get(line.row.lineId);
    if (!changed) continue;
    const difference = changed.short - line.short || wholeOn(changed).localeCompare(wholeOn(line));
    if (difference > 0 && isBad(changed)) harmed.push(effect(line, changed));
    if (difference < 0 && isBad(line)) helped.push(effect(line, changed));
  }
  return { helped, harmed };
}

function effect(before: LineCover, after: LineCover): Effect {
  const { kitId, kitCode, part, position, sequence, needBy } = after.row;
  const where = `${kitCode} (${position || `line ${sequence}`}, needed ${needBy})`;
  return { kitId, kitCode, sentence: `${where}: ${stand(after, part)}, now ${stand(before, part)}.` };
}

function stand({ short, late, coveredOn }: LineCover, part: LineCover['row']['part']): string {
  if (short > 0) return `short of ${partWords(short, part)}`;
  if (late > 0) return `late, whole on ${coveredOn}`;
  return coveredOn && coveredOn !== 'never' ? `whole on ${coveredOn}` : 'whole from its own promises';
}

export function summaryOf(
  moved: { pieces: string; lot: string; kit: string },
  { helped, harmed }: { helped: readonly Effect[]; harmed: readonly Effect[] },
): string {
  const codes = (list: readonly Effect[]) => [...new Set(list.map(({ kitCode }) => kitCode))].join(', ');
  const what = `${moved.pieces} of ${moved.lot} to ${moved.kit}`;
  if (helped.length + harmed.length === 0) return `${what} makes no kit earlier and none late.`;
  if (harmed.length === 0) return `${what} helps ${codes(helped)} and makes nobody late.`;
  if (helped.length === 0) return `${what} helps nobody and makes ${codes(harmed)} short or late.`;
  return `${what} helps ${codes(helped)} and makes ${codes(harmed)} short or late.`;
}
