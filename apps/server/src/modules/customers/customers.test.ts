import { customerOperations } from '@hubwright/contracts/customers/operations';
import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import { day } from '../../../../../tests/support/days.ts';
import { as } from '../../../../../tests/support/people.ts';
import { expectRefused } from '../../../../../tests/support/refused.ts';
import { ShopApp, type Visitor } from '../../../../../tests/support/shop-app.ts';

describe('customers and their aircraft', () => {
  let shop: ShopApp;
  let desk: Visitor;
  beforeAll(async () => {
    shop = await ShopApp.open('shop');
    desk = await as(shop, 'front-desk');
  });
  afterAll(() => shop.close());

  const newAircraft = async (registration: string) => {
    const { rows } = (await desk.call(customerOperations.listCustomers, { search: 'coldbeck' })).body;
    const input = { customerId: rows[0]?.id ?? '', registration, airframe: 'Heronby Pinnace', engine: 'Brindle B-360' };
    return (await desk.call(customerOperations.addAircraft, input)).body.id;
  };

  it('are found by any piece of their name or code, page by page', async () => {
    const found = await desk.call(customerOperations.listCustomers, { search: 'air' });
    expect(found.body.rows.map(({ name }) => name)).toEqual(['Brackenmoor Air Charter', 'Galena Ridge Air Ambulance']);
    const names: string[] = [];
    for (let after: string | null | undefined; after !== null; ) {
      const page: { rows: { name: string }[]; next: string | null } = (
        await desk.call(customerOperations.listCustomers, { limit: 5, ...(after ? { after } : {}) })
      ).body;
      expect(page.rows.length).toBeLessThanOrEqual(5);
      names.push(...page.rows.map(({ name }) => name));
      after = page.next;
    }
    expect(names).toHaveLength(12);
    expect(names).toEqual([...names].sort());
  });

  it('keep the latest reading of each meter', async () => {
    const aircraftId = await newAircraft('ZZ-CB1');
    const read = (readOn: string, meter: 'airframe' | 'tachometer', hoursTenths: number) =>
      desk.call(customerOperations.recordReading, { aircraftId, readOn, meter, hoursTenths });
    await read(day(-40), 'airframe', 10_000);
    await read(day(-5), 'airframe', 10_400);
    await read(day(-20), 'airframe', 10_200);
    await read(day(-20), 'tachometer', 3_000);
    const { rows } = (await desk.call(customerOperations.listCustomers, { search: 'COLDBECK' })).body;
    const shown = await desk.call(customerOperations.showCustomer, { customerId: rows[0]?.id ?? '' });
    const aircraft = shown.body.aircraft.find(({ registration }) => registration === 'ZZ-CB1');
    expect(aircraft?.latestReadings.map(({ meter, hoursTenths }) => [meter, hoursTenths])).toEqual([
      ['airframe', 10_400],
      ['tachometer', 3_000],
    ]);
  });

  it('refuse readings that cannot be: to come, backwards, more than a day has hours, negative', async () => {
    const aircraftId = await newAircraft('ZZ-CB2');
    const operation = customerOperations.recordReading;
    const reading = { aircraftId, readOn: day(-10), meter: 'airframe' as const, hoursTenths: 5_000 };
    await desk.call(operation, reading);
    const refused = (change: Partial<typeof reading>, pointer: string, type = 'reading-out-of-line') =>
      expectRefused(
        { shop, visitor: desk },
        { operation, input: { ...reading, ...change } },
        { status: 422, type, pointer },
      );
    await refused({ readOn: day(3) }, '/readOn');
    await refused({ readOn: day(-2), hoursTenths: 4_990 }, '/hoursTenths');
    await refused({ readOn: day(-20), hoursTenths: 5_010 }, '/hoursTenths');
    await refused({ readOn: day(-8), hoursTenths: 5_800 }, '/hoursTenths');
    await refused({ hoursTenths: -1 }, '/hoursTenths', 'invalid-input');
    await refused({ hoursTenths: 2_000_001 }, '/hoursTenths', 'invalid-input');
  });

  it('change by version, and say what was accepted before', async () => {
    const { rows } = (await desk.call(customerOperations.listCustomers, { search: 'Merrick' })).body;
    const { id: customerId, version, name, contactName, email, phone, address } = rows[0] as (typeof rows)[number];
    const details = { name, contactName, email, phone, address, acceptedSources: ['maker-new' as const] };
    const change = { ...details, customerId, unpaidHold: true };
    const answer = await desk.call(customerOperations.changeCustomer, change, { version });
    expect(answer.body).toMatchObject({ id: customerId, version: version + 1 });
    const stale = { operation: customerOperations.changeCustomer, input: change, options: { version } };
    await expectRefused({ shop, visitor: desk }, stale, { status: 412, type: 'out-of-date' });
  });

  it('refuse a second of the same code or registration, an unknown customer, and another role', async () => {
    const again = { code: 'OXLIP', name: 'Another club', acceptedSources: ['maker-new'] };
    const operation = customerOperations.addCustomer;
    await expectRefused(
      { shop, visitor: desk },
      { operation, input: again },
      {
        status: 409,
        type: 'already-exists',
        pointer: '/code',
      },
    );
    const none = { ...again, code: 'NEWCLUB', acceptedSources: [] };
    const noSource = { status: 422, type: 'invalid-input', pointer: '/acceptedSources' };
    await expectRefused({ shop, visitor: desk }, { operation, input: none }, noSource);
    const aircraft = { registration: 'ZZ-BMA', airframe: 'Heronby Pinnace', engine: 'Brindle B-360' };
    const { rows } = (await desk.call(customerOperations.listCustomers, { limit: 1 })).body;
    const add = customerOperations.addAircraft;
    const taken = { operation: add, input: { ...aircraft, customerId: rows[0]?.id ?? '' } };
    await expectRefused({ shop, visitor: desk }, taken, {
      status: 409,
      type: 'already-exists',
      pointer: '/registration',
    });
    const unknown = { ...aircraft, registration: 'ZZ-NEW', customerId: '0199a055-0000-7000-8000-000000000000' };
    await expectRefused(
      { shop, visitor: desk },
      { operation: add, input: unknown },
      { status: 404, type: 'not-found' },
    );
    const technician = await as(shop, 'technician');
    await expectRefused(
      { shop, visitor: technician },
      { operation, input: again },
      { status: 403, type: 'not-permitted' },
    );
  });
});
