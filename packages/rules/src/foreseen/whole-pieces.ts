/**
 * Parts of pieces in whole ones, in order: each gets what the sum so far, rounded, grew by. So many small chances add up to pieces, and
 * what is planned in all is never half a piece from what is expected.
 *
 * @example wholePieces([0.4, 0.4, 0.4, 1.3]) // [0, 1, 0, 2]: 0.4, 0.8, 1.2 and 2.5 so far
 */
export function wholePieces(quantities: readonly number[]): number[] {
  let sum = 0;
  let given = 0;
  return quantities.map((quantity) => {
    sum += quantity;
    // Sums that should be a half are a little less in binary.
    const now = Math.round(sum + 1e-9);
    const pieces = now - given;
    given = now;
    return pieces;
  });
}
