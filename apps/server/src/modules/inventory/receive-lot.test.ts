import { inventoryOperations } from '@hubwright/contracts/inventory/operations';
import { peopleOperations } from '@hubwright/contracts/people/operations';
import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import { ShopApp } from '../../../../../tests/support/shop-app.ts';

describe('receiving a lot', () => {
  let shop: ShopApp;
  beforeAll(async () => {
    shop = await ShopApp.open('empty');
  });
  afterAll(() => shop.close());

  it('answers not-signed-in without a session', async () => {
    const answer = await shop.visitor().call(inventoryOperations.listLots, {});
    expect([answer.status, answer.body.type]).toEqual([401, '/problems/not-signed-in']);
  });

  it('sets the shop up once', async () => {
    const visitor = shop.visitor();
    const input = {
      shop: {
        name: 'Tansy Hollow Airscrew Works',
        certificateNumber: 'TH-1',
        ratings: ['Propeller class 2'],
        authority: 'Demonstration authority',
        recordStatements: { approval: 'Approved', caution: 'Demonstration data' },
        zone: 'America/Chicago',
        currency: 'USD',
        units: 'inch' as const,
        labourRateMinor: 12_000,
        evaluationFeeMinor: 45_000,
        taxPercent: '6.5',
        taxRounding: 'total' as const,
        quoteValidDays: 30,
        inspectOwnWork: [],
      },
      administrator: {
        signInName: 'ada',
        displayName: 'A. Mere',
        initials: 'AM',
        password: 'a long enough demo phrase',
      },
    };
    expect((await visitor.call(peopleOperations.setUpShop, input)).body).toEqual({ ok: true });
    expect((await visitor.call(peopleOperations.setUpShop, input)).body.type).toBe('/problems/already-set-up');
    const signedIn = await visitor.call(peopleOperations.signIn, {
      signInName: 'ada',
      password: 'a long enough demo phrase',
    });
    expect(signedIn.body).toMatchObject({ displayName: 'A. Mere', roles: ['administrator'] });
    expect((await visitor.call(peopleOperations.me, {})).status).toBe(200);
  });
});
