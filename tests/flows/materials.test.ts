import { freezerOperations } from '@hubwright/contracts/inventory/freezer-operations';
import type { ModelContent } from '@hubwright/contracts/manuals/revision';
import { travelerOperations } from '@hubwright/contracts/work-orders/traveler-operations';
import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import { issueRevision } from '../../apps/server/src/modules/manuals/issue-revision.command.ts';
import { masked, work } from '../../seed/data/manuals/shapes.ts';
import { readsOf } from '../support/arrivals.ts';
import { day } from '../support/days.ts';
import { Job } from '../support/job.ts';
import { threeBladeContent } from '../support/manual-content.ts';
import { MovedClock } from '../support/moved-clock.ts';
import { actorOf, as, pin } from '../support/people.ts';
import { expectRefused } from '../support/refused.ts';
import { ShopApp, type Visitor } from '../support/shop-app.ts';

const { moveFrozenLot, listFrozenLots } = freezerOperations;
const hours = 3_600;
const steps = [
  work('Lay up', 'blade-repair', 60, { materials: ['LM-PR7'] }),
  work('Paint', 'coating', 30, { form: [{ name: 'paint lot' }, ...masked('butt face', 'bearing seat')] }),
];

/** Prepreg is out of the freezer for up to 240 hours in all; paint stays off the mating faces. */
describe('material that ages out of the freezer, and faces that are masked', () => {
  const clock = new MovedClock();
  let shop: ShopApp;
  let technician: Visitor;
  let job: Job;
  let lotId: string;
  beforeAll(async () => {
    shop = await ShopApp.open('shop', { clock });
    technician = await as(shop, 'technician');
    const model = await readsOf(shop).unitModel.findFirstOrThrow({ where: { designation: 'Q3C-76' } });
    const three = await threeBladeContent(shop);
    const content = {
      ...three,
      routes: three.routes.map((route) => (route.partClass === 'blade' ? { ...route, steps } : route)),
      ...{ modelId: model.id, tboRules: [] },
    } as unknown as ModelContent;
    const revision = { manualId: model.manualId, revision: '9', issuedOn: day(-1), models: [content] };
    await shop.run(issueRevision, revision, await actorOf(shop, 'inspector'));
    job = await Job.arrived(shop, 'QR9301');
    await job.tornDown();
    const part = await job.reads.part.findUniqueOrThrow({ where: { number: 'LM-PR7' } });
    const code = await job.onShelf(part.id, 100);
    lotId = (await job.reads.lot.findUniqueOrThrow({ where: { code } })).id;
  }, 120_000);
  afterAll(() => shop.close());

  const move = async (to: 'out' | 'in', at?: string) => {
    const { version } = await job.reads.lot.findUniqueOrThrow({ where: { id: lotId } });
    return { operation: moveFrozenLot, input: { lotId, to, ...(at ? { at } : {}) }, options: { version } };
  };
  const moved = async (to: 'out' | 'in') => {
    const { operation, input, options } = await move(to);
    expect((await technician.call(operation, input, options)).status).toBe(200);
  };
  const layUp = async (blade: number, more: { lotIds?: string[]; performedAt?: string; lateReason?: string }) => {
    const { id: stepId, title } = await job.nextAt(`blade ${blade}`);
    expect(title).toBe('Lay up');
    return { operation: travelerOperations.signStep, input: { stepId, ...more, signature: pin } };
  };
  const refused = (request: Parameters<typeof expectRefused>[1], type: string, status: number, pointer?: string) =>
    expectRefused({ shop, visitor: technician }, request, { status, type, ...(pointer ? { pointer } : {}) });

  it('go out of the freezer and back by turns, never in the future', async () => {
    await refused(await move('in'), 'freezer-wrong', 409);
    await moved('out');
    await refused(await move('out'), 'freezer-wrong', 409);
    const later = new Date(clock.now().getTime() + 60_000).toISOString();
    await refused(await move('in', later), 'taken-at-wrong', 422, '/at');
  });

  it('are named by their lots in the signature, with the time each was out', async () => {
    await refused(await layUp(1, {}), 'material-missing', 422, '/lotIds');
    const other = await job.reads.part.findUniqueOrThrow({ where: { number: 'LM-FA3' } });
    const film = await job.reads.lot.findUniqueOrThrow({ where: { code: await job.onShelf(other.id, 5) } });
    await refused(await layUp(1, { lotIds: [film.id] }), 'material-wrong', 409, '/lotIds/0');
    clock.seconds += 10 * hours;
    const { operation, input } = await layUp(1, { lotIds: [lotId] });
    const answer = await technician.call(operation, input);
    const { content, lotIds } = await job.reads.signOff.findUniqueOrThrow({ where: { id: answer.body.signOffId } });
    expect(lotIds).toEqual([lotId]);
    const [used] = JSON.parse(content).lots;
    expect(used).toMatchObject({ part: 'LM-PR7' });
    expect(used.outMinutes).toBeGreaterThanOrEqual(600);
    expect(used.outMinutes).toBeLessThan(605);
  });

  it('are refused once their out-time is over, and again when they are frozen anew', async () => {
    const before = clock.now().toISOString();
    clock.seconds += 231 * hours;
    await refused(await layUp(2, { lotIds: [lotId] }), 'out-time-over', 409, '/lotIds/0');
    await moved('in');
    clock.seconds += 24 * hours;
    await refused(await layUp(2, { lotIds: [lotId] }), 'out-time-over', 409, '/lotIds/0');
    const row = (await technician.call(listFrozenLots, {})).body.rows.find(({ id }) => id === lotId);
    expect(row).toMatchObject({ outSince: null, over: 'its out-time is used up', outTimeHours: 240 });
    // Work done while it was good is judged by that time.
    const { operation, input } = await layUp(2, {
      lotIds: [lotId],
      performedAt: before,
      lateReason: 'sheet was mislaid',
    });
    expect((await technician.call(operation, input)).status).toBe(200);
  });

  it('masked faces are confirmed one by one before paint is signed', async () => {
    const { id: stepId, title } = await job.nextAt('blade 1');
    expect(title).toBe('Paint');
    const paint = (butt: string, ...more: { name: string; value: string }[]) => ({
      operation: travelerOperations.signStep,
      input: {
        ...{ stepId, signature: pin },
        form: [{ name: 'paint lot', value: 'P-1' }, { name: 'butt face masked', value: butt }, ...more],
      },
    });
    await refused(paint('confirmed'), 'form-missing', 422, '/form');
    const seat = { name: 'bearing seat masked', value: 'confirmed' };
    await refused(paint('yes', seat), 'form-missing', 422, '/form/1/value');
    const { operation, input } = paint('confirmed', seat);
    const answer = await technician.call(operation, input);
    const { content } = await job.reads.signOff.findUniqueOrThrow({ where: { id: answer.body.signOffId } });
    expect(JSON.parse(content).form).toContainEqual(seat);
  });
});
