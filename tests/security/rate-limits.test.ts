import { customerOperations } from '@hubwright/contracts/customers/operations';
import { kitsOperations } from '@hubwright/contracts/kits/operations';
import { peopleOperations } from '@hubwright/contracts/people/operations';
import { unitOperations } from '@hubwright/contracts/units/operations';
import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import { as } from '../support/people.ts';
import { type Answer, ShopApp, type Visitor } from '../support/shop-app.ts';

/** 200 a minute for a person make 800 for an address, 4 sign-ins and 20 heavy reads. */
const perMinute = 200;

/** Asks until it is told to slow down; answers how often that went well and what the refusal was. */
async function until429(ask: () => Promise<Answer>, most: number): Promise<{ before: number; refused: Answer }> {
  for (let before = 0; before <= most; before += 1) {
    const refused = await ask();
    if (refused.status === 429) return { before, refused };
  }
  throw new Error(`${most} requests went through`);
}

function expectSlowedDown({ status, headers, body }: Answer): void {
  expect([status, body.type, body.status]).toEqual([429, '/problems/too-many', 429]);
  expect(headers['content-type']).toMatch(/^application\/problem\+json/);
  expect(Number(headers['retry-after'])).toBeGreaterThan(0);
  expect(Number(headers['retry-after'])).toBeLessThanOrEqual(60);
}

describe('too many requests', () => {
  let shop: ShopApp;
  let desk: Visitor;
  let parts: Visitor;
  beforeAll(async () => {
    shop = await ShopApp.open('shop', { requestsPerMinute: perMinute });
    [desk, parts] = [await as(shop, 'front-desk'), await as(shop, 'parts-room')];
  });
  afterAll(() => shop.close());

  it('heavy reads have a limit of their own, and others go on', async () => {
    const { before, refused } = await until429(() => parts.call(kitsOperations.shortages, {}), 30);
    expect(before).toBe(20);
    expectSlowedDown(refused);
    expect((await parts.call(unitOperations.find, { text: 'x' })).status).toBe(429);
    expect((await parts.call(customerOperations.listCustomers, {})).status).toBe(200);
    expect((await desk.call(kitsOperations.shortages, {})).status).toBe(200);
  });

  it('a person has a limit that does not stop the next one', async () => {
    const { before, refused } = await until429(() => parts.call(peopleOperations.me, {}), perMinute);
    expect(before).toBeGreaterThan(perMinute / 2);
    expectSlowedDown(refused);
    expect((await desk.call(peopleOperations.me, {})).status).toBe(200);
  });

  it('sign-in has a small limit for an address, counted apart', async () => {
    const ask = () =>
      shop.visitor().call(peopleOperations.signIn, { signInName: 'nobody', password: 'no such phrase in this shop' });
    const { before, refused } = await until429(ask, 10);
    // Two people have signed in before.
    expect(before).toBe(2);
    expectSlowedDown(refused);
    expect((await desk.call(peopleOperations.me, {})).status).toBe(200);
  });

  it('an address has a limit, signed in or not, on pages as on data', async () => {
    const { refused } = await until429(() => shop.visitor().send('GET', '/nothing/here'), perMinute * 4);
    expectSlowedDown(refused);
    expect((await desk.call(peopleOperations.me, {})).status).toBe(429);
  });
});

describe('costly reads at once', () => {
  let shop: ShopApp;
  beforeAll(async () => {
    shop = await ShopApp.open('shop');
  });
  afterAll(() => shop.close());

  it('are eight for one person: the ninth is told to wait, others go on, and each end makes room again', async () => {
    const [parts, desk] = [await as(shop, 'parts-room'), await as(shop, 'front-desk')];
    const many = Array.from({ length: 60 }, () => parts.call(kitsOperations.shortages, {}));
    const other = await desk.call(unitOperations.find, { text: 'x' });
    const answers = await Promise.all(many);
    const refused = answers.filter(({ status }) => status !== 200);
    expect(refused.length).toBeGreaterThan(0);
    expect(answers.length - refused.length).toBeGreaterThanOrEqual(8);
    for (const { status, body } of refused) expect([status, body.type]).toEqual([503, '/problems/busy']);
    expect(refused[0]?.body.detail).toMatch(/8 of them are yours/);
    expect(other.status).toBe(200);
    for (let left = 0; left < 12; left += 1) expect((await parts.call(kitsOperations.shortages, {})).status).toBe(200);
  });

  it('that nobody waits for any more make room too', async () => {
    const parts = await as(shop, 'parts-room');
    const ending = new AbortController();
    const given = Array.from({ length: 8 }, () =>
      fetch(`${shop.address}/api/shortages`, { headers: { cookie: parts.cookie }, signal: ending.signal }).catch(
        () => undefined,
      ),
    );
    ending.abort();
    await Promise.all(given);
    for (let left = 0; left < 12; left += 1) expect((await parts.call(kitsOperations.shortages, {})).status).toBe(200);
  });
});
