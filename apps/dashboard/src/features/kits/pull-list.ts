import type { KitLine } from './kit-detail.ts';

/** One thing to fetch: so many pieces of one lot from one bin for one line. */
export interface Fetch {
  readonly key: string;
  readonly line: KitLine;
  readonly bin: string;
  readonly lotCode: string;
  readonly quantity: number;
  readonly expiresOn: string | null;
  readonly reservationId: string;
}

/**
 * What to fetch, in the order of the walk past the bins; bins the walk does not know come last, by their code.
 *
 * @param walk bin codes in the order they are passed
 */
export function pullList(lines: readonly KitLine[], walk: readonly string[]): readonly Fetch[] {
  const place = new Map(walk.map((code, at) => [code, at]));
  const at = (bin: string) => place.get(bin) ?? Number.MAX_SAFE_INTEGER;
  const picks = lines.flatMap((line) =>
    line.reservations.map((promise) => ({
      key: promise.id,
      line,
      bin: promise.bin,
      lotCode: promise.lotCode,
      quantity: promise.quantity,
      expiresOn: promise.expiresOn,
      reservationId: promise.id,
    })),
  );
  return picks.sort(
    (one, other) =>
      at(one.bin) - at(other.bin) ||
      one.bin.localeCompare(other.bin, 'en', { numeric: true }) ||
      one.line.sequence - other.line.sequence,
  );
}

/** Pieces of the line that lie on the shelf and are promised to nobody yet. */
export function unpromised(line: KitLine): number {
  const promised = line.reservations.reduce((sum, each) => sum + each.quantity, 0);
  return Math.max(0, line.have - promised);
}
