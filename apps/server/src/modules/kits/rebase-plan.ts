import { partWords } from '@hubwright/contracts/inventory/quantity';
import type { ExplodedLine } from '@hubwright/rules/kit-list';
import { type Figures, toPull } from './line-figures.ts';
import { type LotsOfLine, surplusOf } from './surplus.ts';

interface PartNamed {
  readonly id: string;
  readonly number: string;
  readonly description: string;
  readonly issueUnit: string;
}

/** A line of a kit with its pieces, and what the list it was made from says of its source. */
export interface LineNow {
  readonly id: string;
  readonly kitId: string;
  readonly kitCode: string;
  readonly part: PartNamed;
  readonly position: string;
  readonly quantity: number;
  readonly minimum: number | null;
  readonly source: string;
  readonly listLineId: string;
  readonly listedSource: string;
  readonly figures: Figures;
  readonly lots: LotsOfLine;
}

/** What a line asks for from now on; quantity zero: it is listed no more. */
export interface LineThen {
  readonly line: LineNow;
  readonly quantity: number;
  readonly minimum: number | null;
  readonly source: string;
  readonly listLineId: string;
  /** Promised pieces it needs no more. */
  readonly freed: number;
}

/** One line of the list that differs, in words, and what becomes of pieces that were moved for it. */
export interface KitDifference {
  readonly where: string;
  readonly what: string;
  readonly before: string | null;
  readonly after: string | null;
  readonly consequences: readonly string[];
}

export interface RebasePlan {
  readonly set: readonly LineThen[];
  readonly add: readonly ExplodedLine[];
  readonly differences: readonly KitDifference[];
}

/**
 * Lays the list of another revision over the lines of a kit, by position and part. Lines that a finding added stay; a line that
 * a decision made new-only stays so. A line listed no more is left with nothing to ask for, never without its pieces. Pure.
 */
export function planRebase(
  now: readonly LineNow[],
  list: readonly ExplodedLine[],
  known: { readonly parts: ReadonlyMap<string, PartNamed>; readonly tornDown: boolean; readonly kitCode: string },
): RebasePlan {
  const open = [...list];
  const set: LineThen[] = [];
  const differences: KitDifference[] = [];
  for (const group of groupsOf(now)) {
    const [first] = group;
    if (!first) continue;
    const at = open.findIndex(({ partId, position }) => partId === first.part.id && position === first.position);
    const [listed] = at < 0 ? [undefined] : open.splice(at, 1);
    const then = share(group, listed, known.tornDown);
    set.push(...then);
    differences.push(...differenceOf(group, then, listed));
  }
  for (const line of open) {
    const part = known.parts.get(line.partId);
    const what = `${part?.number ?? ''} ${part?.description ?? ''}, ${line.position}`;
    differences.push({ where: known.kitCode, what, before: null, after: words(line), consequences: [] });
  }
  return { set, add: open, differences };
}

/** Lines of one list line at one position: several where only some of its pieces were replaced. */
function groupsOf(lines: readonly LineNow[]): LineNow[][] {
  const groups = new Map<string, LineNow[]>();
  for (const line of lines) {
    const key = `${line.listLineId} ${line.position}`;
    groups.set(key, [...(groups.get(key) ?? []), line]);
  }
  return [...groups.values()];
}

const isDecided = (line: LineNow) => line.source !== line.listedSource;
const total = (lines: readonly { readonly quantity: number }[]) =>
  lines.reduce((sum, { quantity }) => sum + quantity, 0);

function share(group: readonly LineNow[], listed: ExplodedLine | undefined, tornDown: boolean): LineThen[] {
  const quantities = spread(group, listed?.quantity ?? 0);
  const least = group.find((line) => !isDecided(line)) ?? group[0];
  return group.map((line, index) => {
    const quantity = quantities[index] ?? 0;
    const source = !listed || isDecided(line) ? line.source : listed.source;
    const minimum = line === least && listed?.minimum !== undefined ? Math.min(listed.minimum, quantity) : null;
    const isSame = quantity === line.quantity && source === line.source;
    const needs = isSame ? line.figures.reserved : toPull({ quantity, source }, line.figures, tornDown);
    return {
      ...{ line, quantity, minimum, source },
      listLineId: listed?.listLineId ?? line.listLineId,
      freed: Math.max(0, line.figures.reserved - needs),
    };
  });
}

/** More goes to the line nobody decided on; less is taken where no piece is yet, decided lines last. */
function spread(group: readonly LineNow[], wanted: number): number[] {
  const quantities = group.map(({ quantity }) => quantity);
  const order = group
    .map((_, index) => index)
    .sort((a, b) => Number(isDecided(group[a] as LineNow)) - Number(isDecided(group[b] as LineNow)));
  let over = total(group) - wanted;
  if (over < 0) {
    const [index = 0] = order;
    quantities[index] = (quantities[index] ?? 0) - over;
    return quantities;
  }
  for (const keepsHeld of [true, false]) {
    for (const index of order) {
      const { figures } = group[index] as LineNow;
      const kept = keepsHeld ? figures.inTray + figures.installed : 0;
      const less = Math.max(0, Math.min(over, (quantities[index] ?? 0) - kept));
      quantities[index] = (quantities[index] ?? 0) - less;
      over -= less;
    }
  }
  return quantities;
}

function differenceOf(
  group: readonly LineNow[],
  then: readonly LineThen[],
  listed: ExplodedLine | undefined,
): KitDifference[] {
  const [first] = group;
  if (!first) return [];
  const undecided = group.find((line) => !isDecided(line)) ?? first;
  const quantity = total(group);
  const before =
    quantity === 0 ? null : words({ quantity, minimum: undecided.minimum, source: undecided.listedSource });
  const after = listed ? words(listed) : null;
  if (before === after) return [];
  return [
    {
      where: first.kitCode,
      what: `${first.part.number} ${first.part.description}, ${first.position}`,
      ...{ before, after },
      consequences: then.flatMap(consequencesOf),
    },
  ];
}

function consequencesOf({ line, quantity, source, freed }: LineThen): string[] {
  const { part, position, figures, lots } = line;
  const turnedNew = source === 'new' && line.source !== 'new';
  return [
    ...(freed > 0 ? [`${partWords(freed, part)} promised to it is free again`] : []),
    ...surplusOf({ part, position, quantity, source, turnedNew }, figures, lots).map(({ what }) => what),
  ];
}

function words(line: { quantity: number; minimum?: number | null | undefined; source: string }): string {
  const least = line.minimum ?? null;
  return `${least === null ? line.quantity : `${least} to ${line.quantity}`}, ${line.source}`;
}
