import { afterAll, beforeAll, describe, expect, it, jest } from '@jest/globals';
import pg from 'pg';
import { freshDatabase, type TestDatabase } from '../../../../../tests/support/database.ts';
import { Database } from './client.ts';

describe('a transaction has one connection', () => {
  let database: TestDatabase;
  let opened: Database;
  beforeAll(async () => {
    database = await freshDatabase('shop');
    opened = new Database(database.url);
  });
  afterAll(async () => {
    await opened.close();
    await database.drop();
  });

  it('and sends it one query after the other, though relations are read side by side', async () => {
    const send = pg.Client.prototype.query as (...asked: unknown[]) => unknown;
    const running = new Map<unknown, number>();
    let most = 0;
    const spy = jest.spyOn(pg.Client.prototype, 'query').mockImplementation(function (
      this: pg.Client,
      ...asked: unknown[]
    ) {
      running.set(this, (running.get(this) ?? 0) + 1);
      most = Math.max(most, running.get(this) ?? 0);
      const answer = send.apply(this, asked) as Promise<unknown>;
      const done = () => running.set(this, (running.get(this) ?? 0) - 1);
      answer?.then?.(done, done);
      return answer as never;
    } as never);
    try {
      const models = await opened.prisma.$transaction(async (tx) => {
        const [rows, people] = await Promise.all([
          tx.unitModel.findMany({ include: { applications: true, flatRates: true, manual: true } }),
          tx.person.findMany({ take: 1 }),
        ]);
        return [rows, people];
      });
      expect(models).toHaveLength(2);
    } finally {
      spy.mockRestore();
    }
    expect(most).toBe(1);
  });

  it('and goes on after one of them failed', async () => {
    const failing = opened.prisma.$transaction((tx) =>
      Promise.allSettled([tx.$queryRawUnsafe('SELECT 1/0'), tx.person.count()]).then((both) => {
        expect(both[0].status).toBe('rejected');
        throw new Error('as it must be');
      }),
    );
    await expect(failing).rejects.toThrow('as it must be');
    expect(await opened.prisma.person.count()).toBeGreaterThan(0);
  });
});
