import { customerOperations } from '@hubwright/contracts/customers/operations';
import { dueDateOperations } from '@hubwright/contracts/due-dates/operations';
import { fleetTableOperations as op } from '@hubwright/contracts/imports/fleet-operations';
import { intervalOperations } from '@hubwright/contracts/units/interval-operations';
import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import { readsOf } from '../support/arrivals.ts';
import { day } from '../support/days.ts';
import { as } from '../support/people.ts';
import { readPdf } from '../support/read-pdf.ts';
import { expectRefused } from '../support/refused.ts';
import { ShopApp, type Visitor } from '../support/shop-app.ts';
import { sendTable } from '../support/tables.ts';

const head =
  'registration,airframe,engine,model,serial,installed on,meter,meter at installation,time since new at installation,time since overhaul at installation,last overhaul on';
const aircraft = (registration: string) => [registration, 'Heronby Pinnace', 'Brindle B-360', 'Q3C-76'];
const row = (registration: string, ...cells: string[]) => [...aircraft(registration), ...cells].join(',');

describe('a customer’s table is held against what is on record', () => {
  let shop: ShopApp;
  let desk: Visitor;
  let customerId: string;
  beforeAll(async () => {
    shop = await ShopApp.open('shop');
    desk = await as(shop, 'front-desk');
    customerId = (await readsOf(shop).customer.findUniqueOrThrow({ where: { code: 'OXLIP' } })).id;
  }, 120_000);
  afterAll(() => shop.close());

  const sent = async (...lines: string[]) => {
    const path = `/api/customers/${customerId}/fleet-tables/fleet`;
    const { body } = await sendTable(shop, desk, { kind: 'fleet', bytes: [head, ...lines].join('\r\n'), path });
    return body.id;
  };
  const preview = async (importId: string) => (await desk.call(op.previewFleetTable, { importId, limit: 50 })).body;
  const applied = async (...lines: string[]) => {
    const importId = await sent(...lines);
    return (await desk.call(op.applyFleetTable, { importId, mapping: (await preview(importId)).mapping })).body;
  };
  const item = async (serial: string) =>
    (await readsOf(shop).serializedItem.findFirstOrThrow({ where: { serial } })).id;
  const timesOf = async (serial: string) =>
    (await desk.call(intervalOperations.itemTimes, { itemId: await item(serial) })).body;

  it('a unit that was never overhauled has since overhaul what it has since new, and the preview says so', async () => {
    const line = row('ZZ-FN1', 'FN 1', '2025-02-01', 'tachometer', '500.0', '120.4', '', 'never');
    const shown = await preview(await sent(line));
    expect(shown.rows[0]).toMatchObject({
      ...{ verdict: 'new', errors: [] },
      changes: [{ field: 'overhauledOn', from: 'never', to: 'its time since new counts as its time since overhaul' }],
    });
    expect(await applied(line)).toMatchObject({ counts: { new: 1 } });
    expect(await timesOf('FN 1')).toMatchObject({ sinceNew: { tenths: 1_204 }, sinceOverhaul: { tenths: 1_204 } });
    expect((await preview(await sent(line))).counts).toEqual({ new: 0, changed: 0, same: 1, wrong: 0 });
  });

  it('a unit that was never overhauled comes due by its hours, counted from what its table said', async () => {
    const reads = readsOf(shop);
    const { id: aircraftId } = await reads.aircraft.findUniqueOrThrow({ where: { registration: 'ZZ-FN1' } });
    const read = (ago: number, hoursTenths: number) =>
      desk.call(customerOperations.recordReading, { aircraftId, readOn: day(-ago), meter: 'tachometer', hoursTenths });
    // 500.0 h at installation, 700.0 and 900.0 h on the meter.
    expect((await read(100, 7_000)).body).toHaveProperty('id');
    expect((await read(0, 9_000)).body).toHaveProperty('id');
    // Two hours a day are supposed: 60.875 h in a month of 30.4375 days.
    const asked = { unitId: await item('FN 1'), hoursPerMonth: '60.875' };
    const { body } = await desk.call(dueDateOperations.nextDue, asked);
    const { id: modelId } = await reads.unitModel.findFirstOrThrow({ where: { designation: 'Q3C-76' } });
    const limits = await reads.tboRule.findMany({
      where: { modelId, applicationId: null, useCategory: null, serialFrom: null, ageFromMonths: null },
    });
    const limit = Math.min(...limits.flatMap(({ hoursTenths }) => hoursTenths ?? []));
    // 120.4 h when it was installed and 400.0 h since: what is left at two hours a day.
    expect(body).toMatchObject({ governedBy: 'hours', hoursLeftTenths: limit - 1_204 - 4_000, overdue: false });
    expect(body.dueOn).toBe(day(Math.floor((limit - 5_204) / 20)));
    expect(body.basis).toContain('No day of an overhaul is on record: hours are counted from the paper of 2025-02-01');
  });

  it('a unit that was never overhauled cannot have another time since overhaul, nor an overhaul on record', async () => {
    await applied(row('ZZ-FN2', 'FN 2', '2025-02-01', 'tachometer', '500.0', '120.4', '20.4', '2025-01-15'));
    const { rows } = await preview(
      await sent(
        row('ZZ-FN2', 'FN 2', '2025-02-01', 'tachometer', '500.0', '120.4', '', 'Never'),
        row('ZZ-FN3', 'FN 3', '2025-02-01', 'tachometer', '500.0', '120.4', '20.4', 'never overhauled'),
        row('ZZ-FN4', 'FN 4', '2025-02-01', 'tachometer', '500.0', 'unknown', '', 'never'),
      ),
    );
    expect(rows.map(({ line, errors }) => [line, errors])).toEqual([
      [2, [{ column: 10, field: 'overhauledOn', detail: 'An overhaul of 2025-01-15 is on record: correct the row' }]],
      [
        3,
        [expect.objectContaining({ field: 'sinceOverhaul', detail: expect.stringMatching(/^Never overhauled, so/) })],
      ],
      [4, []],
    ]);
  });

  it('a contradiction with what is on record is a fault of its row in the preview, and nothing is taken over', async () => {
    await applied(row('ZZ-FX1', 'FX 1', '2025-01-10', 'tachometer', '1000.0', '2210.5', '0.0', '2024-12-01'));
    const [interval] = (await desk.call(intervalOperations.aircraftIntervals, { itemId: await item('FX 1') })).body
      .rows;
    const removed = { intervalId: interval?.intervalId ?? '', to: '2025-06-01', toTenths: 10_900, basis: 'the owner' };
    expect((await desk.call(intervalOperations.reportRemoved, removed)).status).toBe(200);
    const importId = await sent(
      row('ZZ-FX2', 'FX 2', '2025-09-01', 'tachometer', '300.0', '10.0', '0.0', '2025-08-20'),
      row('ZZ-FX3', 'FX 1', '2025-09-01', 'tachometer', '4000.0', '2300.5', '0.0', '2025-03-01'),
    );
    const { counts, rows, mapping } = await preview(importId);
    expect(counts).toEqual({ new: 1, changed: 0, same: 0, wrong: 1 });
    expect(rows.map(({ line, errors }) => [line, errors.map(({ field, detail }) => `${field}: ${detail}`)])).toEqual([
      [2, []],
      [
        3,
        [
          'overhauledOn: By what is on record it was installed on an aircraft on the day of an overhaul. Correct the row, or what is on record of the unit first',
        ],
      ],
    ]);
    const request = { operation: op.applyFleetTable, input: { importId, mapping } };
    await expectRefused({ shop, visitor: desk }, request, { status: 409, type: 'rows-wrong' });
    const mended = await applied(
      row('ZZ-FX3', 'FX 1', '2025-09-01', 'tachometer', '4000.0', '2300.5', '0.0', '2025-08-01'),
    );
    expect(mended).toMatchObject({ counts: { new: 1 } });
  });

  it('the printed history says whose word an overhaul is', async () => {
    const answer = await fetch(`${shop.address}/api/units/${await item('FX 1')}/whole-history/pdf`, {
      headers: { cookie: desk.cookie },
    });
    const { text } = await readPdf(new Uint8Array(await answer.arrayBuffer()));
    expect(text).toContain('overhaul, as its owner says');
    expect(text).toContain('declared in a table of its owner');
  });
});
