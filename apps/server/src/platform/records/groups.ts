interface OfSubject {
  readonly kind: string;
  readonly id: string;
}

/** Rows that come ordered by subject, taken subject by subject, so that several streams can be walked side by side. */
export class Groups<Row extends OfSubject> {
  private readonly rows: AsyncIterator<Row>;
  private row: Row | undefined;
  private begun = false;

  constructor(rows: AsyncIterable<Row>) {
    this.rows = rows[Symbol.asyncIterator]();
  }

  /** The subject whose rows come next; undefined at the end. */
  async next(): Promise<string | undefined> {
    if (!this.begun) await this.advance();
    return this.row && nameOf(this.row);
  }

  /** Each row of one subject; none when another comes first. */
  async *each(subject: string): AsyncGenerator<Row> {
    while ((await this.next()) === subject) {
      yield this.row as Row;
      await this.advance();
    }
  }

  async take(subject: string): Promise<Row[]> {
    const rows: Row[] = [];
    for await (const row of this.each(subject)) rows.push(row);
    return rows;
  }

  private async advance(): Promise<void> {
    this.begun = true;
    const { value, done } = await this.rows.next();
    this.row = done ? undefined : value;
  }
}

function nameOf({ kind, id }: OfSubject): string {
  return `${kind} ${id}`;
}
