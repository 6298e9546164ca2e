import { randomUUID } from 'node:crypto';
import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import pg from 'pg';
import { verifyDatabase } from '../../apps/server/src/platform/records/verify-database.ts';
import { demoPassword, smallestShop } from '../support/builders.ts';
import { ServerProcess } from '../support/server-process.ts';

const handedOver = 'a first passphrase handed over';
const kills = Number(process.env.KILLS ?? 10);

/** One clerk who receives lots one after the other and remembers what the server said. */
class Clerk {
  /** Keys the server acknowledged, with the lot's code; keys it never answered, to be sent again. */
  readonly acknowledged = new Map<string, string>();
  readonly unanswered = new Set<string>();
  private stopped = false;

  constructor(
    private readonly address: string,
    private readonly cookie: string,
    private readonly partId: string,
  ) {}

  async work(): Promise<void> {
    this.stopped = false;
    while (!this.stopped) if (!(await this.receive(randomUUID()))) return;
  }

  stop(): void {
    this.stopped = true;
  }

  /** Sends again what was never answered, with the same keys. */
  async resend(): Promise<void> {
    for (const key of [...this.unanswered]) await this.receive(key);
  }

  private async receive(key: string): Promise<boolean> {
    this.unanswered.add(key);
    try {
      const response = await fetch(`${this.address}/api/inventory/lots`, {
        method: 'POST',
        headers: { 'content-type': 'application/json', cookie: this.cookie, 'idempotency-key': key },
        body: JSON.stringify({
          partId: this.partId,
          quantity: 3,
          sourceClass: 'maker-new',
          supplierLot: key,
          certificate: 'C-1',
        }),
      });
      const body = (await response.json()) as { code?: string };
      if (response.status !== 200) return response.status === 503;
      this.acknowledged.set(key, body.code ?? '');
      this.unanswered.delete(key);
      return true;
    } catch {
      return false;
    }
  }
}

describe('the power goes', () => {
  let server: ServerProcess;
  let cookie = '';
  let clerks: Clerk[] = [];
  const query = async (text: string) => {
    const client = new pg.Client({ connectionString: await server.databaseUrl() });
    await client.connect();
    try {
      return (await client.query(text)).rows;
    } finally {
      await client.end();
    }
  };
  const post = (path: string, body: unknown) =>
    fetch(server.address + path, {
      method: 'POST',
      headers: { 'content-type': 'application/json', 'idempotency-key': randomUUID(), cookie },
      body: JSON.stringify(body),
    });
  const send = async (path: string, body: unknown) => {
    const response = await post(path, body);
    expect([path, response.status]).toEqual([path, 200]);
    return (await response.json()) as { id?: string };
  };
  const signIn = async (signInName: string, password = demoPassword) =>
    (await post('/api/session', { signInName, password })).headers
      .getSetCookie()
      .map((line) => line.split(';')[0])
      .join('; ');
  beforeAll(async () => {
    server = await ServerProcess.inFreshFolder();
    await server.start();
    await send('/api/set-up', smallestShop);
    cookie = await signIn('first');
    await send('/api/people', {
      signInName: 'clerk',
      displayName: 'Wren Talbot',
      initials: 'WT',
      roles: ['parts-room'],
      password: handedOver,
    });
    cookie = await signIn('clerk', handedOver);
    await send('/api/session/password', { password: handedOver, newPassword: demoPassword });
    cookie = await signIn('clerk');
    const part = await send('/api/parts', {
      number: 'KILL-1',
      maker: 'Quillon',
      description: 'Washer',
      class: 'hardware',
      issueUnit: 'piece',
      leadTimeDays: 1,
      unitPrice: '1.00',
    });
    clerks = Array.from({ length: 8 }, () => new Clerk(server.address, cookie, part.id ?? ''));
  }, 120_000);
  afterAll(() => server.discard(), 30_000);

  it(`loses nothing acknowledged and keeps nothing half done over ${kills} kills under load`, async () => {
    const starts: number[] = [];
    for (let round = 0; round < kills; round += 1) {
      const work = clerks.map((clerk) => clerk.work());
      await new Promise((resolve) => setTimeout(resolve, 150 + Math.random() * 500));
      if (round % 2 === 1) await server.killDatabase();
      await server.kill();
      await Promise.all(work);
      starts.push(await server.start());
      for (const clerk of clerks) await clerk.resend();
    }
    console.log(`ready again after ${starts.map(Math.round).join(', ')} ms`);
    const acknowledged = new Map(clerks.flatMap((clerk) => [...clerk.acknowledged]));
    expect(clerks.flatMap((clerk) => [...clerk.unanswered])).toEqual([]);
    expect(acknowledged.size).toBeGreaterThan(kills * 8);
    const lots = await query(`
      SELECT l.supplier_lot AS key, l.code, l.id,
        (SELECT count(*)::int FROM movements m WHERE m.lot_id = l.id AND m.quantity = 3) AS movements,
        (SELECT count(*)::int FROM record_links k JOIN record_entries e ON e.id = k.entry_id WHERE k.subject_kind = 'lot' AND k.subject_id = l.id) AS entries,
        (SELECT sum(on_hand)::int FROM balances b WHERE b.lot_id = l.id) AS "onHand"
      FROM lots l WHERE l.certificate = 'C-1' AND length(l.supplier_lot) = 36`);
    expect(new Map(lots.map((lot) => [lot.key, lot.code]))).toEqual(acknowledged);
    expect(lots.filter((lot) => lot.movements !== 1 || lot.entries !== 1 || lot.onHand !== 3)).toEqual([]);
    expect((await verifyDatabase(await server.databaseUrl())).faults).toEqual([]);
    expect(Math.max(...starts)).toBeLessThan(30_000);
  }, 240_000);
});
