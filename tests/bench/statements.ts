import pg from 'pg';

/** One statement as it went to the database. */
export interface Statement {
  readonly text: string;
  readonly values: readonly unknown[];
}

/** What belongs to no single request: live events and their waking. */
const background = /\b(LISTEN|NOTIFY)\b|FROM outbox|pg_snapshot/;

/** Notes every statement this process sends to PostgreSQL while `during` runs, whichever library sends it. */
export async function statementsOf(during: () => Promise<void>): Promise<Statement[]> {
  const noted: Statement[] = [];
  const { prototype } = pg.Client;
  const original = prototype.query;
  prototype.query = function query(this: pg.Client, ...given: unknown[]) {
    const [first, second] = given as [string | { text: string; values?: unknown[] }, unknown];
    const text = typeof first === 'string' ? first : first.text;
    const values = typeof first === 'string' ? (Array.isArray(second) ? second : []) : (first.values ?? []);
    if (typeof text === 'string' && !background.test(text)) noted.push({ text, values });
    return (original as (...all: unknown[]) => unknown).apply(this, given);
  } as typeof original;
  try {
    await during();
  } finally {
    prototype.query = original;
  }
  return noted;
}
