import type pg from 'pg';

const pageSize = 2_000;
let opened = 0;

/** The rows of a query of any length, a page at a time. The client must be in a transaction; several may be read side by side. */
export async function* eachRow<Row extends object>(
  client: pg.Client | pg.PoolClient,
  text: string,
): AsyncGenerator<Row> {
  opened += 1;
  const cursor = `rows_${opened}`;
  await client.query(`DECLARE ${cursor} NO SCROLL CURSOR FOR ${text}`);
  try {
    for (;;) {
      const { rows } = await client.query<Row>(`FETCH ${pageSize} FROM ${cursor}`);
      yield* rows;
      if (rows.length < pageSize) break;
    }
  } finally {
    await client.query(`CLOSE ${cursor}`).catch(() => undefined);
  }
}
