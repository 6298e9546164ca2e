export interface Kit {
  readonly id: string;
  /** What finishing it is worth, in any one unit, such as promised value × days late avoided. Zero or more. */
  readonly value: number;
  /** Pieces by part. */
  readonly needs: Readonly<Record<string, number>>;
}

/** Kits as columns over parts as rows. */
export interface Model {
  readonly values: Float64Array;
  /** Of each kit the rows of the parts it needs, and how many of each. */
  readonly rows: readonly Int32Array[];
  readonly needs: readonly Float64Array[];
  /** Of each part what is on the shelf. */
  readonly capacity: Float64Array;
}

export function modelOf(kits: readonly Kit[], stock: Readonly<Record<string, number>>): Model {
  const rowOf = new Map<string, number>();
  const capacity: number[] = [];
  const columns = kits.map(({ needs }) => {
    const asked = Object.entries(needs).filter(([, quantity]) => quantity > 0);
    const rows = asked.map(([part]) => {
      const known = rowOf.get(part);
      if (known !== undefined) return known;
      rowOf.set(part, capacity.length);
      return capacity.push(Object.hasOwn(stock, part) ? stock[part]! : 0) - 1;
    });
    return { rows: Int32Array.from(rows), needs: Float64Array.from(asked, ([, quantity]) => quantity) };
  });
  return {
    values: Float64Array.from(kits, ({ value }) => value),
    rows: columns.map(({ rows }) => rows),
    needs: columns.map(({ needs }) => needs),
    capacity: Float64Array.from(capacity),
  };
}

/** Each part a kit needs, and how many. */
export function eachNeed({ rows, needs }: Model, kit: number, what: (row: number, pieces: number) => void): void {
  rows[kit]!.forEach((row, i) => {
    what(row, needs[kit]![i]!);
  });
}

export function fits({ rows, needs }: Model, kit: number, left: Float64Array): boolean {
  const at = rows[kit]!;
  const asked = needs[kit]!;
  for (let i = 0; i < at.length; i += 1) if (asked[i]! > left[at[i]!]!) return false;
  return true;
}

export function take({ rows, needs }: Model, kit: number, left: Float64Array): void {
  const at = rows[kit]!;
  const asked = needs[kit]!;
  for (let i = 0; i < at.length; i += 1) left[at[i]!]! -= asked[i]!;
}

export function putBack({ rows, needs }: Model, kit: number, left: Float64Array): void {
  const at = rows[kit]!;
  const asked = needs[kit]!;
  for (let i = 0; i < at.length; i += 1) left[at[i]!]! += asked[i]!;
}
