import { peopleOperations } from '@hubwright/contracts/people/operations';
import { serverOperations } from '@hubwright/contracts/server/operations';
import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import { setUp, signedIn, smallestShop } from '../../../../../tests/support/builders.ts';
import { MovedClock } from '../../../../../tests/support/moved-clock.ts';
import { tableHashes } from '../../../../../tests/support/refused.ts';
import { ShopApp, type Visitor } from '../../../../../tests/support/shop-app.ts';
import { createApp } from '../../app.ts';

describe('a server whose clock was set back', () => {
  const clock = new MovedClock();
  let shop: ShopApp;
  let visitor: Visitor;
  beforeAll(async () => {
    shop = await ShopApp.open('empty', { clock });
    await setUp(shop);
    visitor = await signedIn(shop, 'first');
  });
  afterAll(() => shop.close());

  const change = async (via = visitor) => {
    const { version } = (await via.call(peopleOperations.shop, {})).body;
    return via.call(peopleOperations.changeShop, smallestShop.shop, { version });
  };
  const status = async (via = visitor) => (await via.call(serverOperations.ready, {})).body.clock;

  it('bears the seconds by which clocks of one network differ', async () => {
    expect((await change()).status).toBe(200);
    clock.seconds = -90;
    expect((await change()).status).toBe(200);
    expect(await status()).toBe('right');
  });

  it('writes and signs nothing dated more than two minutes before its newest entry, says so, and reads on', async () => {
    clock.seconds = -130;
    const before = await tableHashes(shop.databaseUrl);
    expect(await change()).toMatchObject({ status: 503, body: { type: '/problems/clock-behind' } });
    expect(await tableHashes(shop.databaseUrl)).toEqual(before);
    expect(await status()).toBe('behind');
    expect((await visitor.call(peopleOperations.shop, {})).status).toBe(200);
    clock.seconds = 0;
    expect((await change()).status).toBe(200);
    expect(await status()).toBe('right');
  });

  it('knows the newest entry also after a start, unless it is told that a clock that ran ahead was set right', async () => {
    clock.seconds = 86_400;
    expect((await change()).status).toBe(200);
    const options = {
      filesFolder: `${shop.dataFolder}/files`,
      keysFolder: `${shop.dataFolder}/keys`,
      databaseUrl: shop.databaseUrl,
      sessionSecret: 'a secret only the tests know, long enough',
    };
    for (const [clockSetBack, answer] of [
      [false, 503],
      [true, 200],
    ] as const) {
      const running = await createApp({ ...options, clockSetBack });
      try {
        const beside = ShopApp.beside(running, { ...shop, address: await running.listen(0) });
        expect((await change(await signedIn(beside, 'first'))).status).toBe(answer);
      } finally {
        await running.close();
      }
    }
  });
});
