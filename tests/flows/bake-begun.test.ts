import { findingOperations } from '@hubwright/contracts/findings/operations';
import { bakeOperations } from '@hubwright/contracts/work-orders/bake-operations';
import { loadOperations } from '@hubwright/contracts/work-orders/load-operations';
import { travelerOperations } from '@hubwright/contracts/work-orders/traveler-operations';
import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import { signStep } from '../../apps/server/src/modules/work-orders/sign-step.command.ts';
import { fourBladeWithCounterweights } from '../support/arrivals.ts';
import { Job } from '../support/job.ts';
import { MovedClock } from '../support/moved-clock.ts';
import { as, pin } from '../support/people.ts';
import { expectRefused } from '../support/refused.ts';
import { ShopApp, type Visitor } from '../support/shop-app.ts';

const { beginBake, withdrawBake, listBakes } = bakeOperations;
const { startLoad, signLoad, takeOutOfLoad, listLoads } = loadOperations;
const minute = 60_000;

/** Four counterweights are plated one after the other, the last much later; three of them share an oven. */
describe('a bake put down when it goes into the oven', () => {
  const clock = MovedClock.inTheMorning();
  let shop: ShopApp;
  let technician: Visitor;
  let job: Job;
  let platedAt: number;
  beforeAll(async () => {
    shop = await ShopApp.open('shop', { clock });
    job = await Job.arrived(shop, 'K4101', await fourBladeWithCounterweights(shop, 'K4101', 4));
    await job.inWork();
    await plate('counterweight 1', 'counterweight 2');
    platedAt = clock.now().getTime();
  }, 120_000);
  afterAll(() => shop.close());

  const plate = async (...positions: string[]) => {
    for (const position of positions)
      await shop.run(signStep, await job.entryFor(await job.nextAt(position)), job.people.technician);
  };
  /** On to so many minutes after the first plating; a session does not outlast the jump. */
  const at = async (minutes: number) => {
    clock.seconds += (platedAt + minutes * minute - clock.now().getTime()) / 1000;
    technician = await as(shop, 'technician');
  };
  const instant = (minutes: number) => new Date(platedAt + minutes * minute).toISOString();
  const stepAt = async (position: string) => (await job.nextAt(position)).id;
  const refused = (request: Parameters<typeof expectRefused>[1], status: number, type: string, pointer?: string) =>
    expectRefused({ shop, visitor: technician }, request, { status, type, ...(pointer ? { pointer } : {}) });
  const row = async (position: string) =>
    (await technician.call(listBakes, {})).body.rows.find((one) => one.position === position);
  const chart = (from: number, held = 1390) =>
    [
      [from, '75'],
      [from + 20, '350'],
      [from + 30, '375'],
      [from + 30 + held, '375'],
      [from + 60 + held, '90'],
    ].map(([minutes, temperature]) => ({ at: instant(Number(minutes)), temperature: String(temperature) }));

  it('is in one list from the plating on, and is refused where it cannot be true', async () => {
    await at(60);
    const stepId = await stepAt('counterweight 1');
    expect(await row('counterweight 1')).toMatchObject({ stepId, blocked: null, load: null, bake: { begun: null } });
    const begin = (more: object) => ({ operation: beginBake, input: { stepId, ...more } });
    await refused(begin({ begunAt: instant(61) }), 422, 'performed-in-future', '/begunAt');
    await refused(begin({ begunAt: instant(30) }), 422, 'late-reason-missing', '/lateReason');
    const before = { begunAt: instant(-30), lateReason: 'forgot to enter it' };
    await refused(begin(before), 422, 'performed-at-wrong', '/begunAt');
    await refused({ operation: beginBake, input: {} }, 422, 'invalid-input', '/stepId');
    const other = await stepAt('blade 1');
    await refused({ operation: beginBake, input: { stepId: other } }, 409, 'not-a-bake');
    await refused({ operation: withdrawBake, input: { stepId, reason: 'mistaken' } }, 409, 'bake-not-begun');
    expect((await row('counterweight 1'))?.bake.begun).toBeNull();
  });

  it('stops the deadline and starts the hold; entered in error it is withdrawn with a reason', async () => {
    const stepId = await stepAt('counterweight 1');
    const wrong = await technician.call(beginBake, { stepId, oven: 'Oven 2' });
    expect([wrong.status, wrong.body.bakes[0]?.lateByMinutes]).toEqual([200, 0]);
    await refused({ operation: beginBake, input: { stepId } }, 409, 'bake-begun');
    expect((await row('counterweight 1'))?.bake.begun).toMatchObject({ oven: 'Oven 2', lateReason: null });
    const back = await technician.call(withdrawBake, { stepId, reason: 'it was the part beside it' });
    expect(back.status).toBe(200);
    expect((await row('counterweight 1'))?.bake.begun).toBeNull();
    const kept = await job.reads.ovenBake.findMany({ where: { stepId } });
    expect(kept).toMatchObject([{ stands: false, withdrawReason: 'it was the part beside it' }]);

    await at(100);
    const late = { stepId, oven: 'Oven 1', begunAt: instant(70), lateReason: 'hands full at the oven' };
    expect((await technician.call(beginBake, late)).status).toBe(200);
    const board = (await technician.call(travelerOperations.benchBoard, { limit: 100, process: 'plating' })).body;
    const shown = board.mine.find((one) => one.stepId === stepId)?.bake?.begun;
    expect(shown).toMatchObject({ at: instant(70), oven: 'Oven 1', lateReason: 'hands full at the oven' });
  });

  it('is signed with a chart that begins when it did, and no other', async () => {
    await at(2000);
    const stepId = await stepAt('counterweight 1');
    const sign = (more: object, from = 70) => ({
      operation: travelerOperations.signStep,
      input: { stepId, sheet: { kind: 'bake' as const, chart: chart(from), ...more }, signature: pin },
    });
    await refused(sign({ startedAt: instant(90) }), 422, 'sheet-wrong', '/sheet/startedAt');
    const other = await refused(sign({}, 130), 409, 'outside-limits');
    expect(other.detail).toContain('The chart begins 60 min after the bake began');
    const celsius = chart(70).map((one) => ({
      ...one,
      temperature: String(Math.round(((Number(one.temperature) - 32) * 5) / 9)),
    }));
    const doubted = await refused(sign({ chart: celsius }), 422, 'sheet-wrong', '/sheet/chart');
    expect(doubted.detail).toContain('look at the unit of the recorder');
    await refused(sign({ chart: [...chart(70)].reverse() }), 422, 'sheet-wrong', '/sheet/chart');
    await refused(sign({ chart: chart(70).slice(0, 1) }), 422, 'invalid-input', '/sheet/chart');
    const { operation, input } = sign({});
    const signed = await technician.call(operation, input);
    expect([signed.status, signed.body]).toEqual([200, signed.body]);
    const { content } = await job.reads.signOff.findUniqueOrThrow({ where: { id: signed.body.signOffId } });
    expect(JSON.parse(content).sheet.verdict).toMatchObject({ good: true, begun: { at: instant(70), oven: 'Oven 1' } });
    expect(JSON.parse(content).sheet.said).toContainEqual({
      ...{ name: 'beginning', value: expect.stringContaining('entered later: hands full at the oven') },
    });
    expect(await row('counterweight 1')).toBeUndefined();
    const { travelerId } = await job.reads.travelerStep.findUniqueOrThrow({ where: { id: stepId } });
    const { steps } = (await technician.call(travelerOperations.traveler, { travelerId })).body;
    const drawn = steps.find(({ id }) => id === stepId)?.signOffs[0]?.sheet?.drawn;
    expect(drawn).toMatchObject({ asked: { kind: 'bake', low: '350' }, points: chart(70) });
    await refused({ operation: withdrawBake, input: { stepId, reason: 'too late for that' } }, 409, 'step-done');
    // A correction goes by the same clocks, and its chart is judged again.
    expect(steps.find(({ id }) => id === stepId)?.bake?.begun).toMatchObject({ at: instant(70) });
    const correction = { signOffId: signed.body.signOffId, reason: 'a line of the chart was misread', signature: pin };
    const corrected = (from: number) => ({
      operation: travelerOperations.correctSignOff,
      input: { ...correction, sheet: { kind: 'bake' as const, chart: chart(from) } },
    });
    await refused(corrected(130), 409, 'outside-limits');
    expect((await technician.call(corrected(72).operation, corrected(72).input)).status).toBe(200);
  });

  it('goes in with others as one load; each is judged by its own plating, and the late one is named', async () => {
    await plate('counterweight 3', 'counterweight 4');
    const later = (clock.now().getTime() - platedAt) / minute;
    await at(later + 30);
    const stepIds = await Promise.all([2, 3, 4].map((n) => stepAt(`counterweight ${n}`)));
    const begun = await technician.call(startLoad, { process: 'plating', equipment: 'Oven 1', stepIds });
    expect([begun.status, begun.body]).toEqual([200, begun.body]);
    const loadId = begun.body.id;
    await refused({ operation: beginBake, input: { stepId: stepIds[0] ?? '' } }, 409, 'in-other-load');
    const { bakes } = (await technician.call(beginBake, { loadId })).body;
    expect(bakes.map(({ lateByMinutes }) => lateByMinutes > 0)).toEqual([true, false, false]);
    const [load] = (await technician.call(listLoads, { state: 'open', limit: 10 })).body.rows;
    expect(load?.sheet).toMatchObject({ kind: 'bake' });
    expect(load?.parts.map(({ bake }) => bake?.begun?.oven)).toEqual(['Oven 1', 'Oven 1', 'Oven 1']);

    await at(later + 30 + 1500);
    const sheet = { kind: 'bake' as const, chart: chart(later + 30) };
    const sign = { operation: signLoad, input: { loadId, sheet, signature: pin }, options: { version: 1 } };
    await refused({ ...sign, input: { loadId, signature: pin } as never }, 422, 'sheet-missing', '/sheet');
    const problem = await refused(sign, 409, 'outside-limits');
    const lateOne = load?.parts[0]?.travelerNumber ?? '';
    expect(problem.outside).toEqual([expect.stringMatching(new RegExp(`^${lateOne}: The bake began .* min too late`))]);
    const out = { loadId, stepId: stepIds[0] ?? '', reason: 'began too late for it' };
    const { version } = (await technician.call(takeOutOfLoad, out, { version: 1 })).body;
    const signed = await technician.call(signLoad, sign.input, { version });
    expect([signed.status, signed.body.signOffIds?.length]).toEqual([200, 2]);

    // What came out keeps its clock: it is failed by the same chart, and a finding decides.
    const failing = { stepId: stepIds[0] ?? '', sheet, signature: pin };
    await refused({ operation: travelerOperations.signStep, input: failing }, 409, 'outside-limits');
    const found = { area: 'general', damage: 'other' as const, place: 'plating', description: 'baked late' };
    expect((await technician.call(findingOperations.failStep, { ...failing, ...found })).status).toBe(200);
  });
});
