import pg from 'pg';
import { dateIn } from '../apps/server/src/platform/command/clock.ts';
import { Calendar } from './calendar.ts';
import { administrator, demoPassword, demoPin, people } from './data/people.ts';
import { shop } from './data/shop.ts';
import { seedDirectives } from './directives.ts';
import { checksOfToday } from './equipment.ts';
import { seedFieldBalances } from './field-balances.ts';
import { seedFreezer } from './freezer.ts';
import { seedReference } from './reference.ts';
import { seedReminders } from './reminders.ts';
import { SeedRun } from './run.ts';
import { seedStock } from './stock.ts';
import { seedWorkOrders } from './work-orders.ts';

/** Where and as of when to invent the shop. */
export interface SeedOptions {
  /** The calendar date everything is counted from. */
  readonly today: string;
  /** Where the server on this database keeps its files. */
  readonly filesFolder: string;
}

/**
 * Plays the invented shop into an embedded database that nobody set up yet. It grows in a database beside and takes this
 * one's name when it is whole, so that a start that was killed half-way begins anew. Answers whether it did anything.
 *
 * @param databaseUrl of the owner; nothing else may be connected to it
 */
export async function seedIfEmpty(databaseUrl: string, options: SeedOptions): Promise<boolean> {
  const name = new URL(databaseUrl).pathname.slice(1);
  if (!/^[a-z_]+$/.test(name)) throw new Error(`The database ${name} is not one this program made.`);
  if (!(await isEmpty(databaseUrl))) return false;
  const growing = `${name}_growing`;
  await asAdministrator(databaseUrl, [
    `DROP DATABASE IF EXISTS ${growing} WITH (FORCE)`,
    `CREATE DATABASE ${growing} TEMPLATE ${name}`,
  ]);
  await seedShop(unhurried(named(databaseUrl, growing)), options);
  await asAdministrator(databaseUrl, [
    'CHECKPOINT',
    `DROP DATABASE ${name} WITH (FORCE)`,
    `ALTER DATABASE ${growing} RENAME TO ${name}`,
  ]);
  return true;
}

/** The whole invented shop, on an empty database. */
export async function seedShop(databaseUrl: string, { today, filesFolder }: SeedOptions): Promise<void> {
  const run = await SeedRun.open(databaseUrl, today, filesFolder);
  try {
    const calendar = new Calendar();
    const ids = await seedReference(run, calendar);
    seedStock(run, calendar, ids);
    seedFreezer(run, calendar);
    seedWorkOrders(run, calendar, ids);
    seedDirectives(run, calendar, ids);
    seedFieldBalances(run, calendar, ids);
    seedReminders(run, calendar);
    await calendar.play(run);
    await checksOfToday(run);
  } finally {
    await run.close();
  }
}

/** Today in the invented shop's zone. */
export function shopToday(now: Date): string {
  return dateIn(shop.zone, now);
}

/** Who can sign in to the demonstration, one line a role. */
export function demoSignIns(): string {
  const firstOfRoles = new Map<string, string>([['administrator', administrator.signInName]]);
  for (const { signInName, roles } of people)
    for (const role of roles) if (!firstOfRoles.has(role)) firstOfRoles.set(role, signInName);
  const lines = [...firstOfRoles].map(([role, signInName]) => `  ${signInName.padEnd(12)} ${role}`);
  return [...lines, `  password “${demoPassword}”, PIN ${demoPin}`].join('\n');
}

async function isEmpty(databaseUrl: string): Promise<boolean> {
  const client = new pg.Client({ connectionString: databaseUrl });
  await client.connect();
  try {
    const { rows } = await client.query<{ found: boolean }>('SELECT EXISTS (SELECT FROM people) AS found');
    return !rows[0]?.found;
  } finally {
    await client.end();
  }
}

async function asAdministrator(databaseUrl: string, statements: readonly string[]): Promise<void> {
  const client = new pg.Client({ connectionString: named(databaseUrl, 'postgres') });
  await client.connect();
  try {
    for (const statement of statements) await client.query(statement);
  } finally {
    await client.end();
  }
}

/** The same connection without waiting for the disk at each commit: nobody needs half an invented shop, and the whole is written out. */
function unhurried(databaseUrl: string): string {
  const url = new URL(databaseUrl);
  url.searchParams.set('options', '-c synchronous_commit=off');
  return url.href;
}

function named(databaseUrl: string, name: string): string {
  const url = new URL(databaseUrl);
  url.pathname = `/${name}`;
  return url.href;
}
