/** A file of OR-Library's mknap1: kits and parts in number, the optimum, values, a row of needs for each part, what is on the shelf. */
export function packing(text: string) {
  const numbers = text.trim().split(/\s+/).map(Number);
  const [count = 0, parts = 0, optimum = 0] = numbers;
  const values = numbers.slice(3, 3 + count);
  const needs = (kit: number) =>
    Object.fromEntries(Array.from({ length: parts }, (_, row) => [`p${row}`, numbers[3 + count * (row + 1) + kit]!]));
  const shelf = numbers.slice(3 + count * (parts + 1));
  return {
    optimum,
    kits: values.map((value, kit) => ({ id: String(kit + 1), value, needs: needs(kit) })),
    stock: Object.fromEntries(shelf.map((pieces, row) => [`p${row}`, pieces])),
  };
}
