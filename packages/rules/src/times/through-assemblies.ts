import { RuleError } from '../errors/index.ts';
import { type Away, type InAssembly, type Piece, piecesOfPart } from './pieces.ts';

/** An item sat at a position of another, which may sit in another itself. */
export type Sat = InAssembly & { parentId: string; position: string };

/** What is on record of one item: where it sat, and where it flew or was out of the shop on its own. */
export type OnRecord = { sat: readonly Sat[]; pieces: readonly Piece[]; away: readonly Away[] };

/** A piece of flying with the assemblies it was flown in, the nearest first; none for flying of its own. */
export type PlacedPiece = Piece & { path: readonly Sat[] };

type Flown = { pieces: PlacedPiece[]; away: Away[] };
type Window = { from: string; to: string };
const always: Window = { from: '', to: '~' };

/**
 * Where an item flew, through as many assemblies as it sat in: a part in a subassembly flew where that one flew while it sat there,
 * and so on up to the aircraft. An item that once sat in what sits in it now is no contradiction; at the same time it is one.
 *
 * Source: common practice, no source.
 *
 * @throws RuleError sits-in-itself
 */
export function piecesThrough(itemId: string, recordOf: (itemId: string) => OnRecord): PlacedPiece[] {
  return flown(itemId, { window: always, inside: [] }, recordOf).pieces.sort((a, b) =>
    a.from < b.from ? -1 : a.from > b.from ? 1 : (a.to ?? '~') < (b.to ?? '~') ? -1 : 1,
  );
}

/** Times out of the shop that a stay in an assembly does not cover: what flew then is told by the assembly. */
export function awayOnItsOwn(away: readonly Away[], sat: readonly Pick<Sat, 'from' | 'to'>[]): Away[] {
  return sat.reduce<Away[]>((left, stay) => left.flatMap((one) => without(one, stay)), [...away]);
}

/** `inside`: what is being asked already. The window only keeps apart what sat in one another at different times. */
function flown(
  itemId: string,
  { window, inside }: { window: Window; inside: readonly string[] },
  recordOf: (itemId: string) => OnRecord,
): Flown {
  if (inside.includes(itemId)) throw new RuleError('sits-in-itself', 'A part cannot sit in what sits in it.', 'sat');
  const { sat, pieces, away } = recordOf(itemId);
  const above = sat.flatMap((one) => {
    const during = { from: later(window.from, one.from), to: sooner(window.to, one.to ?? '~') };
    if (during.from >= during.to) return [];
    const parent = flown(one.parentId, { window: during, inside: [...inside, itemId] }, recordOf);
    return [{ sat: one, parent }];
  });
  return {
    pieces: [
      ...pieces.map((piece) => ({ ...piece, path: [] })),
      ...above.flatMap(({ sat: one, parent }) =>
        parent.pieces.flatMap((piece) =>
          piecesOfPart(one, { pieces: [piece], away: parent.away }).map((cut) => ({
            ...cut,
            path: [one, ...piece.path],
          })),
        ),
      ),
    ],
    away: [...away, ...above.flatMap(({ sat: one, parent }) => parent.away.flatMap((out) => overlap(out, one)))],
  };
}

function without({ from, to }: Away, stay: Pick<Sat, 'from' | 'to'>): Away[] {
  if ((to ?? '~') <= stay.from || (stay.to !== undefined && stay.to <= from)) return [{ from, to }];
  const before = from < stay.from ? [{ from, to: stay.from }] : [];
  const after = stay.to !== undefined && stay.to < (to ?? '~') ? [{ from: stay.to, to }] : [];
  return [...before, ...after];
}

function overlap({ from, to }: Away, stay: Pick<Sat, 'from' | 'to'>): Away[] {
  const [start, end] = [later(from, stay.from), sooner(to ?? '~', stay.to ?? '~')];
  return start < end ? [{ from: start, to: end === '~' ? undefined : end }] : [];
}

function later(a: string, b: string): string {
  return a > b ? a : b;
}

function sooner(a: string, b: string): string {
  return a < b ? a : b;
}
