import { manualOperations } from '@hubwright/contracts/manuals/operations';
import { accessOperations } from '@hubwright/contracts/people/access-operations';
import { peopleOperations } from '@hubwright/contracts/people/operations';
import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import pg from 'pg';
import { grantAuthorisation } from '../../apps/server/src/modules/people/grant-authorisation.command.ts';
import { serverActor } from '../../apps/server/src/platform/command/actor.ts';
import { allRounder } from '../support/all-rounder.ts';
import { day } from '../support/days.ts';
import { ShopApp } from '../support/shop-app.ts';

// Of no shape that ids, hashes, hours or amounts have, so that a find is a find.
const secrets = {
  firstPassword: 'Zq otter under the old lock gate',
  password: 'Zq heron over the mill race, nine times',
  wrongPassword: 'Zq this one is wrong on purpose',
  pin: '739150286413',
  wrongPin: '860413957214',
};

/** Every row of every table as text, with the table's name in front. */
async function everything(databaseUrl: string): Promise<string[]> {
  const client = new pg.Client({ connectionString: databaseUrl });
  await client.connect();
  try {
    const tables = await client.query<{ name: string }>(
      "SELECT tablename AS name FROM pg_tables WHERE schemaname = 'public' ORDER BY 1",
    );
    const rows: string[] = [];
    for (const { name } of tables.rows) {
      const found = await client.query<{ text: string }>(
        `SELECT r::text AS text FROM ${client.escapeIdentifier(name)} r`,
      );
      rows.push(...found.rows.map(({ text }) => `${name}: ${text}`));
    }
    return rows;
  } finally {
    await client.end();
  }
}

describe('secrets, with the log as talkative as it gets', () => {
  const logged: string[] = [];
  const writers = [process.stdout, process.stderr] as const;
  const original = writers.map((stream) => stream.write);
  let shop: ShopApp;
  let rows: string[];
  const cookies: string[] = [];

  function listen(): void {
    for (const stream of writers)
      stream.write = ((text: string | Uint8Array) => {
        logged.push(String(text));
        return true;
      }) as typeof stream.write;
  }

  beforeAll(async () => {
    listen();
    shop = await ShopApp.open('shop', { logLevels: ['fatal', 'error', 'warn', 'log', 'debug', 'verbose'] });
    const administrator = await allRounder(shop);
    const person = { signInName: 'secretive', displayName: 'Keeps Secrets', initials: 'KS' };
    const added = await administrator.call(peopleOperations.addPerson, {
      ...person,
      roles: ['inspector'],
      password: secrets.firstPassword,
    });
    const personId = String(added.body.id);
    const boss = { personId: serverActor.personId, roles: ['administrator'] as const };
    await shop.run(
      grantAuthorisation,
      { personId, process: 'supervision', level: 'inspect', validFrom: '2020-01-01' },
      boss,
    );
    const visitor = shop.visitor();
    const enter = (password: string) =>
      visitor.call(peopleOperations.signIn, { signInName: person.signInName, password });
    await enter(secrets.wrongPassword);
    expect((await enter(secrets.firstPassword)).status).toBe(200);
    const own = { password: secrets.firstPassword, newPassword: secrets.password, pin: secrets.pin };
    expect((await visitor.call(accessOperations.chooseOwnPassword, own)).status).toBe(200);
    cookies.push(administrator.cookie, visitor.cookie);
    const { body } = await visitor.call(manualOperations.listManuals, {});
    const [manual] = body.rows as unknown as { revisions?: { id: string }[]; current?: { id: string } | null }[];
    const revisionId = manual?.current?.id ?? manual?.revisions?.[0]?.id ?? '';
    expect(revisionId).not.toBe('');
    const sign = (signature: { pin: string } | { password: string }) =>
      visitor.call(manualOperations.checkCurrency, { revisionId, checkedOn: day(0), signature });
    await sign({ pin: secrets.wrongPin });
    await sign({ password: secrets.wrongPassword });
    await sign({ pin: secrets.pin });
    await sign({ password: secrets.password });
    // Broken on purpose, so that errors are logged with what was sent.
    await visitor.send('POST', '/api/session', { payload: `{"signInName":"x","password":"${secrets.password}"` });
    await visitor.send('POST', '/api/session', { body: { signInName: 'x', password: [secrets.password] } });
    await administrator.send('POST', '/api/people', {
      body: { ...person, password: secrets.password, pin: secrets.pin },
    });
    rows = await everything(shop.databaseUrl);
  }, 60_000);
  afterAll(async () => {
    writers.forEach((stream, at) => {
      stream.write = original[at] as typeof stream.write;
    });
    await shop?.close();
  });

  it('what was done was written: a record entry, a refusal, a receipt, an outbox row, a session and a log', () => {
    for (const table of ['record_entries', 'refusals', 'receipts', 'outbox', 'session', 'people'])
      expect(rows.some((row) => row.startsWith(`${table}: `))).toBe(true);
    expect(rows.some((row) => /^refusals: .*signature-refused/.test(row))).toBe(true);
    expect(logged.join('')).toContain('Nest');
  });

  it.each(Object.entries(secrets))('%s stands in no row of any table and in no log line', (_, secret) => {
    expect(rows.filter((row) => row.includes(secret))).toEqual([]);
    expect(logged.filter((line) => line.includes(secret))).toEqual([]);
  });

  it('a hash of a secret is kept with its person alone', () => {
    const hashes = rows.filter((row) => row.includes('$argon2'));
    expect([...new Set(hashes.map((row) => row.split(':')[0]))]).toEqual(['people']);
    expect(logged.filter((line) => line.includes('$argon2'))).toEqual([]);
  });

  it('a cookie that opens stands nowhere, and the id in it only in the row of the session itself', () => {
    for (const cookie of cookies) {
      const value = decodeURIComponent(/hubwright=([^;]+)/.exec(cookie)?.[1] ?? '');
      const device = /hubwright-device=([^;]+)/.exec(cookie)?.[1] ?? 'no device';
      expect([...rows, ...logged].filter((text) => text.includes(device))).toEqual([]);
      const [id = '', signature = ''] = value.split('.');
      expect(id.length).toBeGreaterThan(20);
      for (const secret of [value, signature])
        expect([...rows, ...logged].filter((text) => text.includes(secret))).toEqual([]);
      expect(logged.filter((line) => line.includes(id))).toEqual([]);
      const holding = rows.filter((row) => row.includes(id));
      expect(holding.map((row) => row.split(':')[0])).toEqual(['session']);
    }
  });
});
