import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import fc from 'fast-check';
import { allRounder } from '../support/all-rounder.ts';
import { addressOf, type Endpoint, endpoints, fitting } from '../support/described.ts';
import { actorOf } from '../support/people.ts';
import { type Answer, ShopApp, type Visitor } from '../support/shop-app.ts';
import { shopHashes } from '../support/shop-hashes.ts';

const unknownId = '0197c0de-0000-7000-8000-000000000000';
const isId = (endpoint: Endpoint, name: string) => endpoint.inPath[name]?.format === 'uuid';
const mapped = (schemas: Endpoint['inQuery']) =>
  Object.fromEntries(Object.entries(schemas).map(([name, schema]) => [name, fitting(schema)]));
const tried = endpoints.filter((endpoint) => Object.keys(endpoint.inPath).some((name) => isId(endpoint, name)));

// OWASP API Security 2023, API1: every id in an address is tried as one nobody has and as one of another noun.
describe('an id in the address that is not of such a thing', () => {
  let shop: ShopApp;
  let visitor: Visitor;
  const ids: Record<string, string> = {};
  let before: Record<string, string>;
  beforeAll(async () => {
    shop = await ShopApp.open('shop');
    visitor = await allRounder(shop);
    ids['one nobody has'] = unknownId;
    ids['a person’s'] = (await actorOf(shop, 'inspector')).personId;
    const customers = await visitor.send('GET', '/api/customers?limit=1');
    ids['a customer’s'] = (customers.body.rows as { id: string }[])[0]?.id ?? '';
    before = await shopHashes(shop.databaseUrl);
  });
  afterAll(() => shop.close());

  /** Sends bodies the description accepts until one is not refused for itself. */
  async function ask(endpoint: Endpoint, id: string): Promise<Answer> {
    const path = Object.entries(endpoint.inPath).map(([name, schema]) => [
      name,
      isId(endpoint, name) ? id : fc.sample(fitting(schema), { numRuns: 1, seed: 7 })[0],
    ]);
    const address = addressOf(endpoint, Object.fromEntries(path));
    if (endpoint.takesTable)
      return visitor.send(endpoint.method, address, { payload: 'a,b\r\n1,2', headers: { 'content-type': 'text/csv' } });
    let answer: Answer | undefined;
    for (let seed = 0; seed < 40 && (answer === undefined || [400, 422].includes(answer.status)); seed += 1) {
      const body = endpoint.body ? (fc.sample(fitting(endpoint.body), { numRuns: 1, seed })[0] as object) : {};
      const signed = 'signature' in body ? { ...body, signature: { pin: '2468' } } : body;
      const query = fc.sample(fc.record(mapped(endpoint.inQuery)), { numRuns: 1, seed })[0] as Record<string, string>;
      const url = endpoint.method === 'GET' && seed > 0 ? `${address}?${new URLSearchParams(query)}` : address;
      answer = await visitor.send(endpoint.method, url, endpoint.method === 'GET' ? {} : { body: signed, version: 1 });
    }
    return answer as Answer;
  }

  it.each(tried.map((endpoint) => [endpoint.id, endpoint] as const))('%s finds nothing there', async (_, endpoint) => {
    for (const [whose, id] of Object.entries(ids)) {
      // An address that means a person or a customer is not asked for its own.
      if (/person/.test(endpoint.path) && whose === 'a person’s') continue;
      if (/customers/.test(endpoint.path) && whose === 'a customer’s') continue;
      const { status, body } = await ask(endpoint, id);
      const isEmptyList = status === 200 && endpoint.method === 'GET' && (body.rows as unknown[])?.length === 0;
      expect({ whose, answer: isEmptyList || [403, 404].includes(status) ? 'nothing there' : [status, body] }).toEqual({
        whose,
        answer: 'nothing there',
      });
    }
  });

  it('and nothing was changed', async () => {
    expect(await shopHashes(shop.databaseUrl)).toEqual(before);
  });
});
