import { benchLinkOperations } from '@hubwright/contracts/governor-tests/link-operations';
import { governorOperations as op } from '@hubwright/contracts/governor-tests/operations';
import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import { BenchSimulator, until } from '../support/bench-simulator.ts';
import { atTheBench, BenchRun, governor } from '../support/governor-visit.ts';
import type { Job } from '../support/job.ts';
import { as } from '../support/people.ts';
import { expectRefused } from '../support/refused.ts';
import { ShopApp, type Visitor } from '../support/shop-app.ts';

describe('readings of a governor', () => {
  let shop: ShopApp;
  let technician: Visitor;
  let manager: Visitor;
  let twin: Job;
  beforeAll(async () => {
    shop = await ShopApp.open('shop');
    [technician, manager] = [await as(shop, 'tobit'), await as(shop, 'manager')];
    twin = await atTheBench(shop, 'VG9012', await governor(shop, 'Orrick Twinlark', 'left'));
  }, 120_000);
  afterAll(() => shop.close());
  const refused = (request: Parameters<typeof expectRefused>[1], status: number, type: string, pointer?: string) =>
    expectRefused({ shop, visitor: technician }, request, { status, type, ...(pointer ? { pointer } : {}) });

  it('come as a table: all of it or nothing, each wrong row named', async () => {
    const run = await BenchRun.begin(twin, technician);
    const head = 'point,value,unit,oil temperature,oil unit';
    const file = (...rows: string[]) => ({
      operation: op.importGovernorReadings,
      input: { runId: run.id, csv: [head, ...rows].join('\r\n') },
    });
    const wrong = file(
      'relief pressure,1965,psi,165,degF',
      'pump capacity,nine,qt/min,165,degF',
      'relief pressure,284,psi,70,degF',
    );
    const problem = await refused(wrong, 422, 'file-wrong', '/csv');
    expect((problem.errors as { detail: string }[]).map(({ detail }) => detail)).toEqual([
      expect.stringMatching(/^Line 3: “nine” is no decimal/),
      expect.stringMatching(/^Line 2: .*look at the unit/),
      expect.stringMatching(/^Line 4: The oil: 70 degF is below/),
    ]);
    await refused({ ...file(), input: { runId: run.id, csv: 'a,b\n1,2' } }, 422, 'file-wrong', '/csv');
    // A break inside quotes counts as a line, and a quote in the middle of an entry is none.
    const broken = await refused(
      file('"no such\npoint",9,psi,165,degF', '', 'pump capacity,nine,qt/min,165,degF'),
      422,
      'file-wrong',
    );
    expect((broken.errors as { detail: string }[]).map(({ detail }) => detail.split(':')[0])).toContain('Line 5');
    const quoted = await refused(file('relief pressure,2"84",psi,165,degF'), 422, 'file-wrong', '/csv');
    expect(quoted.detail).toBe('Line 2: a quote opens or closes inside an entry');
    const good = file('relief pressure,284,psi,165,degF', '"pump capacity",8.6,qt/min,74,degC');
    const { operation, input } = good;
    const looked = await technician.call(operation, input, { dryRun: true });
    expect(looked.body.rows).toHaveLength(2);
    expect((await run.seen()).readings).toHaveLength(0);
    expect((await technician.call(operation, input)).body.rows.map(({ line, pass }) => [line, pass])).toEqual([
      [2, true],
      [3, true],
    ]);
    expect((await run.seen()).readings.map(({ source }) => source)).toEqual(['csv', 'csv']);
  });

  it('come from a bench that sends: only what is fresh, seen, and of the right quantity is taken', async () => {
    const bench = await BenchSimulator.listen();
    const [run] = (await technician.call(op.listGovernorRuns, { limit: 50 })).body.rows.filter(
      ({ state }) => state === 'open',
    );
    const { id: runId = '', bench: gauge } = run ?? {};
    const instrumentId = gauge?.id ?? '';
    const link = { instrumentId, host: '127.0.0.1', port: bench.port };
    const linking = (changes: object) => ({
      operation: benchLinkOperations.linkBench,
      input: { ...link, ...changes },
      options: { version: 0 },
    });
    await expectRefused({ shop, visitor: manager }, linking({ host: '8.8.8.8' }), {
      status: 422,
      type: 'address-outside',
      pointer: '/host',
    });
    await refused(linking({}), 403, 'not-permitted');
    expect((await manager.call(benchLinkOperations.linkBench, link, { version: 0 })).status).toBe(200);
    const live = async () => (await technician.call(benchLinkOperations.liveBenchReadings, { instrumentId })).body;
    await live();
    await until(async () => (await live()).state === 'connected' && bench.watchers === 1);
    const taking = async (channel: string, point: string) => {
      const at = (await live()).channels.find((one) => one.channel === channel)?.at ?? '';
      return { operation: op.takeInstrumentReading, input: { runId, point, channel, at } };
    };
    const sent = async (channel: string, value: number, unit: string) => {
      bench.read('oil', [74, 'degC']);
      bench.read(channel, [value, unit]);
      await until(async () => (await live()).channels.some((one) => one.channel === channel && one.value === value));
    };
    bench.send('rubbish\n');
    await sent('relief', 1965, 'psi');
    expect(await live()).toMatchObject({ refused: 1, lastRefused: 'a line is no JSON' });
    await refused(await taking('relief', 'relief pressure'), 422, 'unit-doubtful', '/unit');
    await refused(await taking('relief', 'high speed stop'), 422, 'invalid-input', '/channel');
    await sent('speed', 2300, 'psi');
    await refused(await taking('speed', 'high speed stop'), 422, 'unit-wrong', '/unit');
    await sent('relief', 1966, 'kPa');
    const { operation, input } = await taking('relief', 'relief pressure');
    const taken = await technician.call(operation, input);
    expect(taken.body).toMatchObject({ pass: true, value: '285.144192' }); // 1966 / 6.894757293168361
    const { readings } = (await technician.call(op.governorRun, { runId })).body;
    expect(readings.at(-1)).toMatchObject({
      source: 'instrument',
      asRead: { unit: 'kPa', oilUnit: 'degC', channel: 'relief' },
    });
    await new Promise((resolve) => setTimeout(resolve, 2_100));
    await refused({ operation, input }, 409, 'reading-stale');
    bench.cut();
    await until(() => bench.connections >= 2);
    await sent('relief', 280, 'psi');
    expect(
      (await technician.call(op.takeInstrumentReading, (await taking('relief', 'relief pressure')).input)).status,
    ).toBe(200);
    await bench.close();
  }, 30_000);
});
