import { processOperations } from '@hubwright/contracts/processes/operations';
import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import { day } from '../../../../../tests/support/days.ts';
import { as } from '../../../../../tests/support/people.ts';
import { expectRefused } from '../../../../../tests/support/refused.ts';
import { ShopApp, type Visitor } from '../../../../../tests/support/shop-app.ts';

const { addInstrument, calibrateInstrument, listCalibrations, listInstruments } = processOperations;

describe('instruments', () => {
  let shop: ShopApp;
  let inspector: Visitor;
  beforeAll(async () => {
    shop = await ShopApp.open('shop');
    inspector = await as(shop, 'inspector');
  });
  afterAll(() => shop.close());

  const overdue = async () => {
    const { rows } = (await inspector.call(listInstruments, { search: 'CAL-02' })).body;
    return rows[0] as (typeof rows)[number];
  };

  it('are in calibration on their last good day and not after', async () => {
    const { rows } = (await inspector.call(listInstruments, { kind: 'caliper' })).body;
    expect(rows.map(({ tag, inCalibration }) => [tag, inCalibration])).toEqual([
      ['CAL-01', true],
      ['CAL-02', false],
    ]);
    const gauge = { tag: 'GAU-77', title: 'Last day', kind: 'pressure-gauge' as const };
    await inspector.call(addInstrument, { ...gauge, calibratedOn: day(-365), calibrationDueOn: shopToday() });
    const found = (await inspector.call(listInstruments, { search: 'GAU-77' })).body.rows[0];
    expect(found?.inCalibration).toBe(true);
  });

  it('are listed by their last good day, the most overdue in service first, page by page the same', async () => {
    const all = (await inspector.call(listInstruments, { order: 'due', limit: 200 })).body.rows;
    const due = all.filter(({ inService }) => inService).map(({ calibrationDueOn }) => calibrationDueOn);
    expect(due.length).toBeGreaterThan(3);
    expect(due).toEqual(due.toSorted());
    const first = (await inspector.call(listInstruments, { order: 'due', limit: 2 })).body;
    const rest = (await inspector.call(listInstruments, { order: 'due', limit: 200, after: first.next ?? '' })).body;
    expect([...first.rows, ...rest.rows].map(({ tag }) => tag)).toEqual(all.map(({ tag }) => tag));
  });

  it('refuse a calibration still to come, or good until before it was made', async () => {
    const { id: instrumentId, version } = await overdue();
    const refused = (dates: { calibratedOn: string; calibrationDueOn: string }, pointer: string) =>
      expectRefused(
        { shop, visitor: inspector },
        {
          operation: calibrateInstrument,
          input: { instrumentId, inService: true, certificate: 'K-1', ...dates },
          options: { version },
        },
        { status: 422, type: 'calibration-dates-wrong', pointer },
      );
    await refused({ calibratedOn: day(5), calibrationDueOn: day(300) }, '/calibratedOn');
    await refused({ calibratedOn: day(-5), calibrationDueOn: day(-5) }, '/calibrationDueOn');
  });

  it('come back into use by a new calibration, and out of it when taken out of service', async () => {
    const { id: instrumentId, version } = await overdue();
    const input = { instrumentId, certificate: 'K-2', calibratedOn: day(-1), calibrationDueOn: day(364) };
    const back = await inspector.call(calibrateInstrument, { ...input, inService: true }, { version });
    expect(back.body).toMatchObject({ version: version + 1 });
    expect((await overdue()).inCalibration).toBe(true);
    await inspector.call(calibrateInstrument, { ...input, inService: false }, { version: version + 1 });
    expect((await overdue()).inCalibration).toBe(false);
  });

  it('keep every calibration: who entered it, its dates and its certificate, newest first', async () => {
    const gauge = { tag: 'GAU-78', title: 'History', kind: 'pressure-gauge' as const };
    const dates = (from: number) => ({ calibratedOn: day(from), calibrationDueOn: day(from + 365) });
    const { id: instrumentId } = (await inspector.call(addInstrument, { ...gauge, ...dates(-365) })).body;
    const input = { instrumentId, inService: true, certificate: 'K-9', ...dates(-2) };
    await (await as(shop, 'manager')).call(calibrateInstrument, input, { version: 1 });
    await inspector.call(calibrateInstrument, { ...input, inService: false, certificate: '' }, { version: 2 });
    const { rows } = (await inspector.call(listCalibrations, { instrumentId })).body;
    expect(rows.map(({ certificate, inService, calibratedOn }) => [certificate, inService, calibratedOn])).toEqual([
      ['', false, day(-2)],
      ['K-9', true, day(-2)],
      ['', true, day(-365)],
    ]);
    expect(new Set(rows.map(({ personName }) => personName)).size).toBe(2);
    expect((await inspector.call(listCalibrations, { instrumentId: rows[0]?.entryId ?? '' })).status).toBe(404);
  });

  it('are not the parts room’s to calibrate', async () => {
    const { id: instrumentId, version } = await overdue();
    const input = { instrumentId, certificate: '', calibratedOn: day(-1), calibrationDueOn: day(9), inService: true };
    const request = { operation: calibrateInstrument, input, options: { version } };
    await expectRefused({ shop, visitor: await as(shop, 'parts-room') }, request, {
      status: 403,
      type: 'not-permitted',
    });
  });
});

/** Today in the invented shop's zone, which late in the evening is not the date in UTC. */
function shopToday(): string {
  return new Intl.DateTimeFormat('sv-SE', { timeZone: 'America/Chicago' }).format(new Date());
}
