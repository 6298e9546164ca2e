import { governorOperations as op } from '@hubwright/contracts/governor-tests/operations';
import { peopleOperations } from '@hubwright/contracts/people/operations';
import { processOperations } from '@hubwright/contracts/processes/operations';
import { travelerOperations } from '@hubwright/contracts/work-orders/traveler-operations';
import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import { day } from '../support/days.ts';
import { atTheBench, BenchRun, beginning, governor } from '../support/governor-visit.ts';
import type { Job } from '../support/job.ts';
import { as, pin } from '../support/people.ts';
import { readPdf } from '../support/read-pdf.ts';
import { expectRefused } from '../support/refused.ts';
import { ShopApp, type Visitor } from '../support/shop-app.ts';

type Method = 'none' | 'uncertainty' | 'root-sum-square';

describe('a governor in a shop that asks for guard bands', () => {
  let shop: ShopApp;
  let technician: Visitor;
  let inspector: Visitor;
  let job: Job;
  beforeAll(async () => {
    shop = await ShopApp.open('shop');
    [technician, inspector] = [await as(shop, 'tobit'), await as(shop, 'inspector')];
    job = await atTheBench(shop, 'VG9201', await governor(shop, 'Heronby Courser 4'));
  }, 120_000);
  afterAll(() => shop.close());

  const refused = (request: Parameters<typeof expectRefused>[1], status: number, type: string) =>
    expectRefused({ shop, visitor: technician }, request, { status, type });
  const asks = async (guardBand: Method) => {
    const administrator = await as(shop, 'administrator');
    const { version, ...profile } = (await administrator.call(peopleOperations.shop, {})).body;
    const changed = await administrator.call(peopleOperations.changeShop, { ...profile, guardBand }, { version });
    expect(changed.status).toBe(200);
  };
  /** The bench comes back with a certificate that says this of each quantity. */
  const knownTo = async (doubts: Readonly<Record<string, string>>) => {
    const { instrumentId } = await beginning(job);
    const { version } = await job.reads.instrument.findUniqueOrThrow({ where: { id: instrumentId } });
    const [own, ...more] = Object.entries(doubts).map(([unit, uncertainty]) => ({ unit, uncertainty }));
    const dates = { calibratedOn: day(0), calibrationDueOn: day(300), inService: true, certificate: 'K-31' };
    const calibration = { instrumentId, ...dates, asFound: 'good' as const, ...own, moreDoubts: more };
    const answer = await inspector.call(processOperations.calibrateInstrument, calibration, { version });
    expect([answer.status, answer.body]).toEqual([200, answer.body]);
  };
  const begun = async () => BenchRun.begin(job, technician);
  const signing = async (runId: string) => {
    const { stepId, instrumentId } = await beginning(job);
    return { stepId, values: [], instrumentId, sheet: { kind: 'governor-test' as const, runId }, signature: pin };
  };

  it('is not begun on a bench whose doubt in a quantity nobody knows, or that is too coarse for a point', async () => {
    await asks('uncertainty');
    const beginRun = async () => ({ operation: op.beginGovernorRun, input: await beginning(job) });
    await knownTo({ psi: '1.5', 'qt/min': '0.1', 'qt/h': '0.2' });
    const unknown = await refused(await beginRun(), 409, 'doubt-unknown');
    expect(unknown.detail).toMatch(/GOV-01: high speed stop.*rpm/);
    await knownTo({ psi: '1.5', 'qt/min': '0.1', 'qt/h': '0.2', rpm: '9' });
    const coarse = await refused(await beginRun(), 409, 'instrument-too-coarse');
    expect(coarse.detail).toMatch(/high speed stop/);
    await knownTo({ psi: '1.5', 'qt/min': '0.1', 'qt/h': '0.2', rpm: '2' });
    const { body } = await technician.call(processOperations.listInstruments, { kind: 'governor-bench', limit: 10 });
    expect(body.rows.find(({ tag }) => tag === 'GOV-01')).toMatchObject({
      ...{ uncertainty: '1.5', unit: 'psi' },
      moreDoubts: expect.arrayContaining([{ uncertainty: '2', unit: 'rpm' }]),
    });
  });

  it('is judged inside the manual’s limits, each point by the doubt of its own quantity', async () => {
    const run = await begun();
    const [relief, leakage, high] = [
      run.point('relief-pressure'),
      run.point('internal-leakage'),
      run.point('high-stop'),
    ];
    // 275 to 295 psi ± 1.5; at most 6.0 qt/h ± 0.2; 2408 to 2425 rpm ± 2, worked by hand.
    const seen = await run.seen();
    expect(seen.acceptedBy).toBe('uncertainty');
    const shown = new Map(seen.standing.map(({ point, accepted }) => [point, accepted]));
    expect(shown.get(relief.name)).toMatchObject({ low: '276.5', high: '293.5', doubt: { uncertainty: '1.5' } });
    expect(shown.get(leakage.name)).toMatchObject({ low: null, high: '5.80' });
    expect(shown.get(high.name)).toMatchObject({ low: '2410.0', high: '2423.0' });
    const pass = async (point: typeof relief, value: string) => (await run.take(point, { value })).pass;
    expect([await pass(relief, '276'), await pass(relief, '276.5')]).toEqual([false, true]);
    expect([await pass(leakage, '6.0'), await pass(leakage, '5.8')]).toEqual([false, true]);
    expect([await pass(high, '2424'), await pass(high, '2423')]).toEqual([false, true]);
    expect((await run.end('broken-off', 'Only tried')).status).toBe(200);
  });

  it('goes on by one rule from beginning to end: another setting or another certificate asks for another run', async () => {
    const run = await begun();
    await asks('none');
    await refused(run.taking(run.point('relief-pressure')), 409, 'acceptance-changed');
    await asks('uncertainty');
    expect((await run.take(run.point('relief-pressure'), { value: '284' })).pass).toBe(true);
    await knownTo({ psi: '3', 'qt/min': '0.1', 'qt/h': '0.2', rpm: '2' });
    await refused(run.taking(run.point('relief-pressure'), { value: '284' }), 409, 'acceptance-changed');
    await refused(await run.ending('failed', 'It does not'), 409, 'acceptance-changed');
    expect((await run.end('broken-off', 'The bench came back from calibration')).status).toBe(200);
  });

  it('keeps in the signature and on the certificate what each point was accepted by, beside the manual’s limits', async () => {
    const run = await begun();
    const middle: Record<string, string> = {
      ...{ 'relief-pressure': '285', 'pump-capacity': '9.5', 'internal-leakage': '3.0' },
      ...{ 'high-stop': '2416', 'low-stop': '1360' },
    };
    for (const point of run.points) await run.take(point, { value: middle[point.kind] });
    expect((await run.end('passed')).status).toBe(200);
    await asks('root-sum-square');
    await refused({ operation: travelerOperations.signStep, input: await signing(run.id) }, 409, 'acceptance-changed');
    await asks('uncertainty');
    const signed = await technician.call(travelerOperations.signStep, await signing(run.id));
    expect([signed.status, signed.body]).toEqual([200, signed.body]);
    const { content } = await job.reads.signOff.findUniqueOrThrow({ where: { id: signed.body.signOffId } });
    const { sheet } = JSON.parse(content);
    expect(sheet.verdict).toMatchObject({
      acceptedBy: 'uncertainty',
      points: expect.arrayContaining([
        expect.objectContaining({
          ...{ name: 'relief pressure', limits: '275 to 295 psi', accepted: '278.0 to 292.0 psi', doubt: '3 psi' },
        }),
      ]),
    });
    expect(sheet.said).toContainEqual({
      ...{ name: 'relief pressure', value: '285 psi (275 to 295 psi, accepted 278.0 to 292.0 psi)' },
    });
    const response = await fetch(`${shop.address}/api/governor-runs/${run.id}/certificate`, {
      headers: { cookie: technician.cookie },
    });
    const { text } = await readPdf(Buffer.from(await response.arrayBuffer()));
    const words = text.replace(/\s+/g, ' ');
    expect(words).toContain('by the whole doubt of the bench');
    expect(words).toMatch(/275 to 295 psi; accepted 278\.0 to 292\.0 psi/);
  });
});
