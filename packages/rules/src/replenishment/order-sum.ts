import { Decimal } from 'decimal.js';

/**
 * What the lines of an order come to, as decimal text: prices are decimals and are not rounded on the way.
 *
 * @example orderSum([{ quantity: 40, unitPrice: '2.5' }, { quantity: 3, unitPrice: '0.105' }]) // '100.315'
 */
export function orderSum(lines: readonly { readonly quantity: number; readonly unitPrice: string }[]): string {
  return lines
    .reduce((sum, { quantity, unitPrice }) => sum.plus(new Decimal(unitPrice).times(quantity)), new Decimal(0))
    .toFixed();
}

/** Whether one decimal text is under another. */
export function isUnder(sum: string, least: string): boolean {
  return new Decimal(sum).lessThan(least);
}

/** What all pieces cost each at this number: the price of the highest break reached, or of the first where none is. */
export function priceAt(
  breaks: readonly { readonly from: number; readonly unitPrice: string }[],
  quantity: number,
): string | undefined {
  const reached = breaks.filter(({ from }) => from <= quantity);
  return (reached.at(-1) ?? breaks[0])?.unitPrice;
}
