import { distance } from 'fastest-levenshtein';

/** A field a table can have: how the template heads it, and other headings that mean the same. */
export interface NamedField {
  readonly field: string;
  readonly title: string;
  readonly also: readonly string[];
}

/** How a column came to be read as a field: said by a person for this table before, named by its heading, or nearly named. */
export type HowMatched = 'remembered' | 'named' | 'near';

export interface MatchedHeadings {
  /** Column by field, counted from 0. */
  readonly mapping: Record<string, number>;
  readonly how: Record<string, HowMatched>;
}

/** Words that say nothing about which column it is. */
const fillers = new Set(['no', 'nr', 'number', 'of', 'the', 'at', 'on', 'in', 'and', 'col', 'column']);

/** A heading in small letters, words parted by one blank: under this form it is compared and remembered. */
export function plainHeading(text: string): string {
  return text
    .normalize('NFKC')
    .toLowerCase()
    .replace(/[^\p{L}\p{N}/]+/gu, ' ')
    .trim();
}

/**
 * Which column is read as which field, by what heads it: what a person said of this heading before comes first, then the title, then
 * other words for it, then what is near one of them (a slip of the pen, words in another order, a filler such as “number”). What is
 * equally near to two is left open. Source: common practice, no source; the distance is Levenshtein's, by a library.
 *
 * @param remembered field by plain heading; an empty field means that the column is not read
 * @example matchHeadings(['Regstration'], [{ field: 'registration', title: 'registration', also: [] }]).mapping // { registration: 0 }
 */
export function matchHeadings(
  header: readonly string[],
  fields: readonly NamedField[],
  remembered: Readonly<Record<string, string>> = {},
): MatchedHeadings {
  const heads = header.map(plainHeading);
  const match = new Match(heads);
  const known = new Set(fields.map(({ field }) => field));
  heads.forEach((head, at) => {
    const said = Object.hasOwn(remembered, head) ? remembered[head] : undefined;
    if (said === '') match.leave(at);
    else if (said !== undefined && known.has(said)) match.take(said, at, 'remembered');
  });
  for (const { field, title } of fields) match.takeNamed(field, [title, field.replace(/[A-Z]/g, ' $&')]);
  for (const { field, also } of fields) match.takeNamed(field, also);
  for (const { field, at } of nearest(fields, match)) match.take(field, at, 'near');
  return { mapping: match.mapping, how: match.how };
}

class Match {
  readonly mapping: Record<string, number> = {};
  readonly how: Record<string, HowMatched> = {};
  private readonly gone = new Set<number>();

  constructor(readonly heads: readonly string[]) {}

  isOpen(field: string): boolean {
    return this.mapping[field] === undefined;
  }

  isFree(at: number): boolean {
    return !this.gone.has(at) && this.heads[at] !== '';
  }

  leave(at: number): void {
    this.gone.add(at);
  }

  take(field: string, at: number, how: HowMatched): void {
    if (!this.isOpen(field) || !this.isFree(at)) return;
    this.mapping[field] = at;
    this.how[field] = how;
    this.gone.add(at);
  }

  takeNamed(field: string, names: readonly string[]): void {
    const plain = names.map(plainHeading);
    const at = this.heads.findIndex((head, index) => this.isFree(index) && plain.includes(head));
    if (at >= 0) this.take(field, at, 'named');
  }
}

interface Pair {
  readonly field: string;
  readonly at: number;
  readonly off: number;
}

/** Pairs that are near enough, each the one nearest of its column and of its field. */
function nearest(fields: readonly NamedField[], match: Match): Pair[] {
  const pairs = fields
    .filter(({ field }) => match.isOpen(field))
    .flatMap(({ field, title, also }) =>
      match.heads.flatMap((head, at): Pair[] => {
        if (!match.isFree(at)) return [];
        const off = Math.min(...[title, ...also].map((name) => offBy(head, plainHeading(name))));
        return off <= allowed(head) ? [{ field, at, off }] : [];
      }),
    );
  const isAlone = (pair: Pair) =>
    pairs.every(
      (other) => other === pair || (other.at !== pair.at && other.field !== pair.field) || other.off > pair.off,
    );
  return pairs.filter(isAlone).sort((a, b) => a.off - b.off);
}

function offBy(head: string, name: string): number {
  return Math.min(distance(head, name), distance(bare(head), bare(name)));
}

/** Without fillers, the words in one order; where nothing but fillers stands, as it is. */
function bare(head: string): string {
  const words = head.split(' ').filter((word) => !fillers.has(word));
  return words.length > 0 ? words.sort().join(' ') : head;
}

function allowed(head: string): number {
  return head.length < 5 ? 0 : head.length < 10 ? 1 : 2;
}
