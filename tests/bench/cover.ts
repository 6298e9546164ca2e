import { cover } from '@hubwright/rules/shortage';
import pg from 'pg';
import { median } from './load.ts';

type Input = Parameters<typeof cover>[0];
const kits = Number(process.env.KITS ?? 10_000);
const linesPerKit = 80;
const parts = 4_000;
const batch = 20_000;

/** A small generator of its own, so that each run covers the same shop. */
function random(seed: number): () => number {
  let x = seed;
  return () => {
    x ^= x << 13;
    x ^= x >>> 17;
    x ^= x << 5;
    return (x >>> 0) / 2 ** 32;
  };
}

function day(n: number): string {
  return new Date(Date.UTC(2026, 0, 1 + n)).toISOString().slice(0, 10);
}

function stressShop(kitCount: number): Input {
  const next = random(0x9e3779b9);
  const part = () => `P${Math.floor(next() * parts)}`;
  const demands = Array.from({ length: kitCount * linesPerKit }, (_, n) => ({
    id: `d${n}`,
    part: part(),
    quantity: 1 + Math.floor(next() * 4),
    needBy: day(Math.floor(n / linesPerKit) % 180),
    priority: 1 + (n % 3),
  }));
  const lots = Math.round(5 * kitCount);
  const onHand = Array.from({ length: lots }, (_, n) => ({
    id: `l${n}`,
    part: part(),
    quantity: 20,
    expires: day(60 + Math.floor(next() * 700)),
  }));
  const incoming = Array.from({ length: Math.round(2 * kitCount) }, (_, n) => ({
    id: `o${n}`,
    part: part(),
    quantity: 30,
    date: day(Math.floor(next() * 120)),
  }));
  return { asOf: day(0), demands, onHand, incoming };
}

interface Table {
  readonly name: string;
  /** Columns as a query of the server names them, with their types. */
  readonly columns: Readonly<Record<string, string>>;
  readonly rows: readonly object[];
}

function tablesOf({ demands, onHand, incoming }: Input): Table[] {
  const row = { id: 'text', part: 'text', quantity: 'int' };
  return [
    { name: 'bench_demands', columns: { ...row, needBy: 'date', priority: 'int' }, rows: demands },
    { name: 'bench_lots', columns: { ...row, expires: 'date' }, rows: onHand },
    { name: 'bench_orders', columns: { ...row, date: 'date' }, rows: incoming },
  ];
}

/** Puts the shop's rows into tables, out of any measured time. */
async function store(sql: pg.Client, { name, columns, rows }: Table): Promise<void> {
  const typed = Object.entries(columns).map(([column, type]) => `"${column}" ${type}`);
  await sql.query(`CREATE TEMP TABLE ${name} (${typed.join(', ')})`);
  for (let at = 0; at < rows.length; at += batch)
    await sql.query(`INSERT INTO ${name} SELECT * FROM jsonb_to_recordset($1::jsonb) AS r(${typed.join(', ')})`, [
      JSON.stringify(rows.slice(at, at + batch)),
    ]);
}

/** Reads a table whole, dates as the texts the rules take. */
async function readAll(sql: pg.Client, { name, columns }: Table): Promise<number> {
  const selected = Object.entries(columns).map(([column, type]) =>
    type === 'date' ? `"${column}"::text` : `"${column}"`,
  );
  return (await sql.query(`SELECT ${selected.join(', ')} FROM ${name}`)).rows.length;
}

function sortLines({ demands }: Input): object[] {
  return [...demands].sort((a, b) =>
    a.needBy < b.needBy ? -1 : a.needBy > b.needBy ? 1 : (a.priority ?? 0) - (b.priority ?? 0),
  );
}

/** Processor time of this process in milliseconds; what PostgreSQL spends is not in it. */
async function timed(work: () => unknown): Promise<number> {
  const before = process.cpuUsage();
  await work();
  const { user, system } = process.cpuUsage(before);
  return (user + system) / 1000;
}

/** `cover` against sorting the same lines and reading the rows with pg, summed. */
export async function coverRow(rounds: number, databaseUrl: string): Promise<string[]> {
  const shop = stressShop(kits);
  const half = stressShop(kits / 2);
  const tables = tablesOf(shop);
  const sql = new pg.Client({ connectionString: databaseUrl });
  await sql.connect();
  for (const table of tables) await store(sql, table);
  const spent = { cover: [] as number[], half: [] as number[], sort: [] as number[], read: [] as number[] };
  for (let round = 0; round < rounds; round += 1) {
    spent.sort.push(await timed(() => sortLines(shop)));
    spent.read.push(
      await timed(async () => {
        for (const table of tables) await readAll(sql, table);
      }),
    );
    spent.half.push(await timed(() => cover(half)));
    spent.cover.push(await timed(() => cover(shop)));
  }
  await sql.end();
  const [ours, sort, read] = [median(spent.cover), median(spent.sort), median(spent.read)];
  const doubling = (ours / median(spent.half)).toFixed(2);
  return [
    'shortage.cover (twin: the sort and the reading)',
    `${ours.toFixed(0)} ms CPU`,
    `${sort.toFixed(0)} + ${read.toFixed(0)} ms CPU`,
    ((sort + read) / ours).toFixed(2),
    `${Math.min(...spent.cover).toFixed(0)}–${Math.max(...spent.cover).toFixed(0)}`,
    `${kits} kits × ${linesPerKit} lines; ${doubling} × per doubling`,
  ];
}
