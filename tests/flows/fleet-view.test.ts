import { arrivalOperations } from '@hubwright/contracts/due-dates/arrival-operations';
import { dueDateOperations } from '@hubwright/contracts/due-dates/operations';
import { addMonths } from '@hubwright/rules/dates';
import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import { day } from '../support/days.ts';
import { MovedClock } from '../support/moved-clock.ts';
import { outThere } from '../support/out-there.ts';
import { as } from '../support/people.ts';
import { readPdf } from '../support/read-pdf.ts';
import { expectUnchanged } from '../support/refused.ts';
import { ShopApp, type Visitor } from '../support/shop-app.ts';

const tbo = 72;

/** The fleet out there as a list, a file, a paper and numbers by month. */
describe('the fleet that comes due', () => {
  const clock = MovedClock.inTheMorning();
  const due = (days: number) => day(days, clock.now());
  let shop: ShopApp;
  let desk: Visitor;
  let manager: Visitor;
  beforeAll(async () => {
    shop = await ShopApp.open('shop', { clock });
    await outThere(shop, [
      { serial: 'FV-OVER', overhauledOn: addMonths(due(-40), -tbo) },
      { serial: 'FV-20', overhauledOn: addMonths(due(20), -tbo) },
      { serial: 'FV-100', overhauledOn: addMonths(due(100), -tbo), customer: 'FERNSIDE' },
      { serial: 'FV-900', overhauledOn: addMonths(due(900), -tbo), customer: 'FERNSIDE' },
    ]);
    [desk, manager] = [await as(shop, 'front-desk'), await as(shop, 'manager')];
  }, 240_000);
  afterAll(() => shop?.close());

  const get = async (path: string) => {
    const response = await fetch(shop.address + path, { headers: { cookie: desk.cookie } });
    return { response, bytes: new Uint8Array(await response.arrayBuffer()) };
  };
  const arrivals = async (asked = {}) => (await desk.call(arrivalOperations.expectedArrivals, asked)).body;

  it('leaves as CSV, every row, overdue first, with the filter of the page', async () => {
    const { response, bytes } = await get('/api/coming-due/csv?days=1095');
    expect(response.headers.get('content-type')).toContain('text/csv');
    const lines = new TextDecoder().decode(bytes).trim().split('\r\n');
    expect(lines.map((line) => line.split(',')[2])).toEqual(['serial', 'FV-OVER', 'FV-20', 'FV-100', 'FV-900']);
    expect(lines[1]).toContain(`${due(-40)},${due(-40)},${due(-40)},-40,yes`);
    const { bytes: few } = await get('/api/coming-due/csv?days=30&search=20');
    expect(new TextDecoder().decode(few).trim().split('\r\n')).toHaveLength(2);
    expect((await get('/api/coming-due/csv?days=0')).response.status).toBe(422);
  });

  it('prints under a heading a customer, and says who decides', async () => {
    const { bytes } = await get('/api/coming-due/pdf?days=1095&group=customer');
    const { text, title, marked } = await readPdf(bytes);
    const words = text.replaceAll(/\s+/g, ' ');
    expect({ title, marked }).toEqual({ title: 'Coming due', marked: true });
    for (const part of ['Brackenmoor Air Charter (2)', 'Fernside Agricultural Spraying (2)', 'FV-OVER', 'decide.'])
      expect(words).toContain(part);
  });

  it('is expected month by month: a calendar date in its month, the overdue in this one, and all of it adds up', async () => {
    const body = await arrivals({ months: 12 });
    const of = (date: string) => body.months.find(({ month }) => month === date.slice(0, 7));
    const inMonth = (date: string) =>
      ['FV-OVER', due(20), due(100)].filter(
        (each) => (each === 'FV-OVER' ? due(0) : each).slice(0, 7) === date.slice(0, 7),
      ).length;
    for (const date of [due(0), due(20), due(100)])
      expect(of(date)?.recommended).toEqual({ expected: inMonth(date), low: inMonth(date), high: inMonth(date) });
    const sum = body.months.reduce((total, { recommended }) => total + recommended.expected, 0);
    expect(sum + body.later.recommended + body.undated.recommended).toBeCloseTo(4, 9);
    expect(body).toMatchObject({ units: { required: 0, recommended: 4 }, later: { recommended: 1 }, withoutDate: 0 });
    expect(body.months.every(({ counted }) => counted === null)).toBe(true);
    expect(body.models).toMatchObject([{ designation: 'Q3C-76', units: 4 }]);
    const models = body.models[0]?.months.reduce((total, month) => total + month.recommended, 0);
    expect(models).toBeCloseTo(3, 9);
  });

  it('spreads a unit that flies over the months its band reaches', async () => {
    const before = await arrivals({ months: 12 });
    const [unitId] = await outThere(shop, [{ serial: 'FV-FLOWN', overhauledOn: addMonths(due(0), -36), flown: 1_930 }]);
    const { body } = await desk.call(dueDateOperations.comingDue, { search: 'FV-FLOWN' });
    const [row] = body.rows;
    expect(row).toMatchObject({ unit: { id: unitId }, governedBy: 'hours' });
    expect(String(row?.earliest) < String(row?.dueOn) && String(row?.dueOn) < String(row?.latest)).toBe(true);
    const after = await arrivals({ months: 12 });
    const more = after.months.map(
      ({ recommended }, index) => recommended.expected - (before.months[index]?.recommended.expected ?? 0),
    );
    const upTo = (date: string) =>
      more
        .filter((_, index) => (after.months[index]?.month ?? '') <= date.slice(0, 7))
        .reduce((sum, each) => sum + each, 0);
    expect(upTo(row?.earliest ?? '')).toBeGreaterThanOrEqual(0.1 - 1e-9);
    expect(upTo(row?.dueOn ?? '')).toBeGreaterThanOrEqual(0.5 - 1e-9);
    expect(upTo(row?.latest ?? '')).toBeGreaterThanOrEqual(0.9 - 1e-9);
    expect(more.filter((each) => each > 0.001).length).toBeGreaterThan(1);
  });

  it('is counted for one customer or one model when asked', async () => {
    const { models } = await arrivals();
    expect((await arrivals({ modelId: models[0]?.modelId })).units.recommended).toBe(5);
    const { rows } = (await desk.send('GET', '/api/coming-due?days=1095&limit=1')).body as unknown as {
      rows: { customer: { id: string } }[];
    };
    expect((await arrivals({ customerId: rows[0]?.customer.id })).units.recommended).toBe(3);
  });

  it('adds recommended ones only by a share that the manager assumes, with a reason, and calls it that', async () => {
    const assume = (who: Visitor, recommendedPercent: number | null, version: number) =>
      who.call(arrivalOperations.assumeArrivals, { recommendedPercent, reason: 'three years of our own' }, { version });
    await expectUnchanged(shop, () => assume(desk, 50, 0), { status: 403, type: 'not-permitted' });
    await expectUnchanged(shop, () => assume(manager, 101, 0), { status: 422, type: 'invalid-input' });
    expect((await assume(manager, 50, 0)).status).toBe(200);
    await expectUnchanged(shop, () => assume(manager, 60, 0), { status: 412, type: 'out-of-date' });
    const body = await arrivals();
    const counted = body.months.reduce((total, month) => total + (month.counted?.expected ?? 0), 0);
    const expected = body.months.reduce((total, month) => total + month.recommended.expected, 0);
    expect(counted).toBeCloseTo(expected / 2, 9);
    expect(body.conventions.join(' ')).toContain('Assumption of the shop: 50 in a hundred');
    expect(body.assumption).toMatchObject({ version: 1, reason: 'three years of our own' });
    expect((await assume(manager, null, 1)).status).toBe(200);
    expect((await arrivals()).months[0]?.counted).toBeNull();
  });
});
