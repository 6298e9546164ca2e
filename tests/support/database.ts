import { randomBytes } from 'node:crypto';
import pg from 'pg';
import { asServer } from '../../apps/server/src/platform/database/server-role.ts';

export type TestDatabase = {
  /** The owner of the tables. */
  url: string;
  /** The role the running server works as. */
  serverUrl: string;
  drop(): Promise<void>;
};

/** `empty` has the tables, `shop` also the invented shop's reference data. Both are made by tests/support/cluster.mjs. */
export type Template = 'empty' | 'shop';
const templateNames: Record<Template, string> = { empty: 'hubwright', shop: 'template_shop' };

const family = `spec_${process.env.JEST_WORKER_ID ?? '0'}_`;
let swept = false;

/**
 * A database of this spec's own, cloned from the migrated template. `drop` it when the spec closes what is connected to
 * it; one that was not dropped goes when the same worker's next spec asks for its first.
 */
export async function freshDatabase(template: Template = 'empty'): Promise<TestDatabase> {
  const name = `${family}${randomBytes(5).toString('hex')}`;
  await asAdministrator(async (client) => {
    if (!swept) await dropFamily(client);
    swept = true;
    await client.query(`CREATE DATABASE ${name} TEMPLATE ${templateNames[template]}`);
  });
  const url = addressOf(name);
  const drop = () => asAdministrator((client) => dropDatabase(client, name));
  return { url, serverUrl: asServer(url), drop };
}

/** A copy of a database nobody is connected to, to be spoiled. */
export async function copyOf(url: string): Promise<TestDatabase> {
  const source = new URL(url).pathname.slice(1);
  const name = `${family}${randomBytes(5).toString('hex')}`;
  await asAdministrator((client) => client.query(`CREATE DATABASE ${name} TEMPLATE "${source}"`));
  const copy = addressOf(name);
  return { url: copy, serverUrl: asServer(copy), drop: () => asAdministrator((client) => dropDatabase(client, name)) };
}

/** An empty database without any migration. */
export async function emptyDatabase(): Promise<TestDatabase> {
  const name = `${family}${randomBytes(5).toString('hex')}`;
  await asAdministrator((client) => client.query(`CREATE DATABASE ${name} TEMPLATE template0`));
  const url = addressOf(name);
  return { url, serverUrl: asServer(url), drop: () => asAdministrator((client) => dropDatabase(client, name)) };
}

async function dropFamily(client: pg.Client): Promise<void> {
  const { rows } = await client.query<{ datname: string }>(
    'SELECT datname FROM pg_database WHERE starts_with(datname, $1)',
    [family],
  );
  for (const { datname } of rows) await dropDatabase(client, datname);
}

async function dropDatabase(client: pg.Client, name: string): Promise<void> {
  await client.query(`DROP DATABASE IF EXISTS ${name} WITH (FORCE)`);
}

async function asAdministrator<T>(use: (client: pg.Client) => Promise<T>): Promise<T> {
  const client = new pg.Client({ connectionString: addressOf('postgres') });
  await client.connect();
  try {
    return await use(client);
  } finally {
    await client.end();
  }
}

function templateUrl(): URL {
  const url = process.env.HUBWRIGHT_TEST_TEMPLATE;
  if (!url) throw new Error('No test database: this spec must run in the project `server` or `browser`.');
  return new URL(url);
}

function addressOf(name: string): string {
  const url = templateUrl();
  url.pathname = `/${name}`;
  return url.href;
}
