import { processOperations } from '@hubwright/contracts/processes/operations';
import { studyOperations } from '@hubwright/contracts/processes/study-operations';
import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import { day } from '../../../../../tests/support/days.ts';
import { as } from '../../../../../tests/support/people.ts';
import { expectRefused } from '../../../../../tests/support/refused.ts';
import { ShopApp, type Visitor } from '../../../../../tests/support/shop-app.ts';

const { listGaugeStudies, recordGaugeStudy } = studyOperations;
const cell = (appraiser: string, part: string, ...readings: string[]) => ({ appraiser, part, readings });
const whole = [
  cell('Ludo', '1', '1.0002', '1.0003'),
  cell('Ludo', '2', '1.0051', '1.0049'),
  cell('Maren', '1', '1.0003', '1.0003'),
  cell('Maren', '2', '1.0050', '1.0052'),
];

describe('a gauge study', () => {
  let shop: ShopApp;
  let inspector: Visitor;
  let instrumentId: string;
  beforeAll(async () => {
    shop = await ShopApp.open('shop');
    inspector = await as(shop, 'inspector');
    const { rows } = (await inspector.call(processOperations.listInstruments, { limit: 1 })).body;
    instrumentId = rows[0]?.id ?? '';
  });
  afterAll(() => shop.close());
  const study = (cells: object[], changes: object = {}) => ({
    ...{ instrumentId, title: 'Pilot bore, three days', unit: 'in', tolerance: '0.0020', heldOn: day(-1), cells },
    ...changes,
  });

  it('is kept as read, and says by both methods how much of the spread is the gauge', async () => {
    expect((await inspector.call(recordGaugeStudy, study(whole) as never)).status).toBe(200);
    const [kept] = (await inspector.call(listGaugeStudies, { instrumentId })).body.rows;
    expect(kept).toMatchObject({ title: 'Pilot bore, three days', recordedBy: 'Bram Ostler', cells: whole });
    expect(kept?.averageAndRange?.percent.gauge).toBeGreaterThan(0);
    expect(kept?.averageAndRange?.percent.gauge).toBeLessThan(10);
    expect(kept?.averageAndRange?.percentOfTolerance).toBeCloseTo(
      ((kept?.averageAndRange?.gauge ?? 0) * 600) / 0.002,
      6,
    );
    expect(kept?.anova.table.map(({ freedom }) => freedom)).toEqual([1, 1, 1, 4]);
  });

  it('larger than the tables of ranges has the analysis of variance alone', async () => {
    const four = whole.map((one) => ({ ...one, readings: [...one.readings, '1.0001', '1.0002'] }));
    await inspector.call(recordGaugeStudy, study(four, { title: 'Four trials', heldOn: day(0) }) as never);
    const [kept] = (await inspector.call(listGaugeStudies, { instrumentId })).body.rows;
    expect(kept).toMatchObject({
      title: 'Four trials',
      averageAndRange: null,
      anova: { categories: expect.anything() },
    });
  });

  it('that is not whole is refused with the place, and nothing is kept', async () => {
    const refuse = (
      cells: object[],
      refusal: { status: number; type: string; pointer?: string },
      changes: object = {},
    ) =>
      expectRefused(
        { shop, visitor: inspector },
        { operation: recordGaugeStudy, input: study(cells, changes) },
        refusal,
      );
    const [one, two, three] = whole;
    await refuse([one, two, three, cell('Maren', '3', '1', '2')] as object[], { status: 422, type: 'study-wrong' });
    await refuse([...whole, one] as object[], { status: 422, type: 'study-wrong', pointer: '/cells/4' });
    await refuse([one, two, three, cell('Maren', '2', '1', '2', '3')] as object[], {
      ...{ status: 422, type: 'study-wrong', pointer: '/cells/3' },
    });
    await refuse([one, two, three, cell('Maren', '2', '1', 'about 2')] as object[], {
      ...{ status: 422, type: 'invalid-input', pointer: '/cells/3/readings/1' },
    });
    await refuse(whole, { status: 422, type: 'study-wrong' }, { tolerance: '0' });
    await refuse(whole, { status: 422, type: 'calibration-dates-wrong', pointer: '/heldOn' }, { heldOn: day(1) });
    const technician = await as(shop, 'technician');
    const request = { operation: recordGaugeStudy, input: study(whole) };
    await expectRefused({ shop, visitor: technician }, request, { status: 403, type: 'not-permitted' });
  });
});
