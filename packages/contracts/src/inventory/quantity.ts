/** Words of the units parts are issued in: for one, for several. A piece needs no word. */
const words: Readonly<Record<string, readonly [string, string]>> = {
  inch: ['in', 'in'],
  gram: ['g', 'g'],
  millilitre: ['ml', 'ml'],
  sheet: ['sheet', 'sheets'],
};

/** A quantity with the unit it is counted in, without a word for pieces: `2`, `3 in`. */
export function quantityText(quantity: number, issueUnit: string): string {
  const unit = words[issueUnit];
  return unit ? `${quantity} ${unit[quantity === 1 ? 0 : 1]}` : String(quantity);
}

/** A quantity of a part as people read it: `2 × Q301-17 packing washer`, `3 in of Q301-40 safety wire`. */
export function partWords(
  quantity: number,
  part: { readonly number: string; readonly description: string; readonly issueUnit: string },
): string {
  const name = `${part.number} ${part.description}`.trim();
  return `${quantityText(quantity, part.issueUnit)} ${part.issueUnit in words ? 'of' : '×'} ${name}`;
}
