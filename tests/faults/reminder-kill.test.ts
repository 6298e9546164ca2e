import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import pg from 'pg';
import { smallestShop } from '../support/builders.ts';
import { MailCatcher } from '../support/mail-catcher.ts';
import { ServerProcess } from '../support/server-process.ts';

const letterId = '01990000-0000-7000-8000-000000000001';
const entryId = '01990000-0000-7000-8000-0000000000ff';
const messageId = `<reminder-${letterId}@shop.example.com>`;

/**
 * A letter in the outbox of a server that is killed after the mail server took the message and before it could write that down: at least
 * once means the letter goes again, and the same Message-ID is how anyone can tell.
 */
describe('a server killed between sending a letter and noting it', () => {
  let server: ServerProcess;
  let catcher: MailCatcher;
  let sql: pg.Client;
  const before = process.env.SMTP_URL;
  beforeAll(async () => {
    catcher = await MailCatcher.open();
    process.env.SMTP_URL = catcher.url;
    server = await ServerProcess.inFreshFolder();
    await server.start();
    const response = await fetch(`${server.address}/api/set-up`, {
      method: 'POST',
      headers: { 'content-type': 'application/json', 'idempotency-key': 'set-up-the-shop-once' },
      body: JSON.stringify(smallestShop),
    });
    if (response.status !== 200) throw new Error(await response.text());
    sql = new pg.Client({ connectionString: await server.databaseUrl() });
    await sql.connect();
  }, 120_000);
  afterAll(async () => {
    if (before === undefined) delete process.env.SMTP_URL;
    else process.env.SMTP_URL = before;
    await sql?.end().catch(() => undefined);
    await server?.discard();
    await catcher?.down();
  });

  /** A letter as `send-reminders` leaves it; what comes before it is told in tests/flows/reminders.test.ts. */
  const putInOutbox = async () => {
    const { rows } = await sql.query<{ id: string }>('SELECT id::text FROM people LIMIT 1');
    const personId = rows[0]?.id;
    const customerId = '01990000-0000-7000-8000-000000000002';
    await sql.query(
      `INSERT INTO customers (id, code, name, email, accepted_sources) VALUES ($1, 'SOME', 'Some Air', 'hangar@some.example.com', '{maker-new}')`,
      [customerId],
    );
    await sql.query(
      `INSERT INTO reminder_settings (id, version, is_on, intervals, sender_name, sender_email, reply_to, subject, opening, closing, reason, person_id, at, entry_id)
       VALUES (gen_random_uuid(), 1, true, '{90}', '', 'due@shop.example.com', '', 'Coming due', '', '', 'set', $1, now(), $2)`,
      [personId, entryId],
    );
    const content = {
      ...{
        number: 'RL-00001',
        shopName: 'Shop',
        senderName: '',
        replyTo: 'due@shop.example.com',
        subject: 'Coming due',
      },
      ...{ opening: 'We write.', closing: '', madeOn: '2026-11-28', units: [] },
    };
    await sql.query(
      `INSERT INTO reminder_letters (id, number, customer_id, way, subject, content, made_on, person_id, at, entry_id)
       VALUES ($1, 'RL-00001', $2, 'e-mail', 'Coming due', $3, '2026-11-28', $4, now(), $5)`,
      [letterId, customerId, JSON.stringify(content), personId, entryId],
    );
    await sql.query(
      `INSERT INTO reminder_deliveries (letter_id, state, to_name, to_email, to_address, message_id, next_try_at)
       VALUES ($1, 'waiting', '', 'hangar@some.example.com', '', $2, now())`,
      [letterId, messageId],
    );
  };
  const delivery = async () =>
    (await sql.query<{ state: string; tries: number }>('SELECT state, tries FROM reminder_deliveries')).rows[0];
  const until = async (holds: () => Promise<boolean> | boolean) => {
    for (const end = Date.now() + 60_000; Date.now() < end; await new Promise((next) => setTimeout(next, 100)))
      if (await holds()) return;
    throw new Error('it did not come to that in a minute');
  };

  it('sends it again under the same Message-ID, and the log says that the first try’s outcome was never learnt', async () => {
    await server.kill();
    let kills = 0;
    catcher.beforeYes = async () => {
      if (kills++ === 0) await server.kill();
    };
    await putInOutbox();
    await server.start();
    await until(() => kills === 1 && catcher.caught.length === 1);
    expect(await delivery()).toEqual({ state: 'sending', tries: 1 });
    // The ten minutes after which a try counts as lost.
    await sql.query("UPDATE reminder_deliveries SET next_try_at = now() - interval '1 second'");
    await server.start();
    await until(async () => (await delivery())?.state === 'sent');
    expect(await delivery()).toEqual({ state: 'sent', tries: 2 });
    expect(catcher.caught.map((mail) => mail.messageId)).toEqual([messageId, messageId]);
    expect(new Set(catcher.caught.map((mail) => mail.text)).size).toBe(1);
    const { rows } = await sql.query<{ what: string; detail: string }>(
      'SELECT what, detail FROM reminder_events ORDER BY at, id',
    );
    expect(rows.map(({ what }) => what)).toEqual(['tried', 'tried', 'sent']);
    expect(rows[1]?.detail).toContain('never learnt');
  }, 180_000);
});
