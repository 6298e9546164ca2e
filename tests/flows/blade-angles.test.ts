import { manualOperations } from '@hubwright/contracts/manuals/operations';
import type { SheetOf } from '@hubwright/contracts/manuals/sheets';
import type { EntryOf } from '@hubwright/contracts/work-orders/sheet-entries';
import { travelerOperations } from '@hubwright/contracts/work-orders/traveler-operations';
import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import pg from 'pg';
import { atTheAngles } from '../support/at-the-angles.ts';
import type { Job } from '../support/job.ts';
import { threeBladeContent } from '../support/manual-content.ts';
import { as } from '../support/people.ts';
import { readPdf } from '../support/read-pdf.ts';
import { expectRefused } from '../support/refused.ts';
import { ShopApp, type Visitor } from '../support/shop-app.ts';

const { signStep, traveler: travelerOp } = travelerOperations;
type Angles = EntryOf<'angles'>;

describe('the blade angles of a built propeller', () => {
  let shop: ShopApp;
  let technician: Visitor;
  let job: Job;
  let travelerId: string;
  let entry: Awaited<ReturnType<Job['entryFor']>>;
  beforeAll(async () => {
    shop = await ShopApp.open('shop');
    technician = await as(shop, 'technician');
    job = await atTheAngles(shop, 'QA8801');
    const step = await job.nextAt('assembly');
    travelerId = step.travelerId;
    entry = await job.entryFor(step);
  }, 180_000);
  afterAll(() => shop.close());

  const own = async () => (await technician.call(travelerOp, { travelerId })).body;
  const owner = async (statement: string) => {
    const client = new pg.Client({ connectionString: shop.databaseUrl });
    await client.connect();
    await client.query(statement);
    await client.end();
  };
  const refused = (
    input: Record<string, unknown>,
    type: string,
    { status = 422, pointer }: { status?: number; pointer?: string } = {},
  ) =>
    expectRefused(
      { shop, visitor: technician },
      { operation: signStep, input: { ...entry, ...input } },
      { status, type, ...(pointer ? { pointer } : {}) },
    );
  const angles = () => entry.sheet as Angles;
  const changed = (blade: number, stop: string, angle: string) => ({
    sheet: {
      ...angles(),
      readings: angles().readings.map((one) => (one.blade === blade && one.stop === stop ? { ...one, angle } : one)),
    },
  });

  it('angles are refused where they are no reading: too few cycles, a blade or stop left out, another unit, no protractor’s', async () => {
    await refused({ sheet: { ...angles(), cycles: 9 } }, 'sheet-wrong', { pointer: '/sheet/cycles' });
    await refused({ sheet: { ...angles(), readings: angles().readings.slice(1) } }, 'sheet-wrong', {
      pointer: '/sheet/readings',
    });
    const low = { sheet: { ...angles(), readings: angles().readings.filter(({ stop }) => stop !== 'high') } };
    expect((await refused(low, 'sheet-wrong')).detail).toBe('Not read: high of blade 1, 2, 3.');
    await refused(changed(2, 'low', '0.2339'), 'sheet-wrong', { pointer: '/sheet/readings/1/angle' });
    await refused(changed(1, 'low', '804'), 'sheet-wrong', { pointer: '/sheet/readings/0/angle' });
    await refused({ sheet: undefined }, 'sheet-missing', { pointer: '/sheet' });
  });

  it('are judged by the application of the unit and by no other; while nobody knows it, none is set', async () => {
    const { applicationId } = await job.workOrder();
    const other = await job.reads.application.findFirstOrThrow({ where: { airframe: 'Maddock Fieldmaster' } });
    const for_ = { sheet: { ...angles(), applicationId: other.id } };
    await refused(for_, 'wrong-application', { status: 409 });
    await owner(`UPDATE work_orders SET application_id = NULL WHERE id = '${job.id}'`);
    await refused({}, 'application-unknown', { status: 409 });
    const foreign = await job.reads.application.findFirstOrThrow({ where: { airframe: 'Orrick Stormcrane' } });
    await owner(`UPDATE work_orders SET application_id = '${foreign.id}' WHERE id = '${job.id}'`);
    const strange = { sheet: { ...angles(), applicationId: foreign.id } };
    await refused(strange, 'angles-unknown', { status: 409 });
    await owner(`UPDATE work_orders SET application_id = '${applicationId}' WHERE id = '${job.id}'`);
  });

  it('outside or too far apart they are never signed as good: it says which blade, which stop and by how much', async () => {
    const out = await refused(changed(2, 'low', '13.75'), 'outside-limits', { status: 409 });
    expect(out.detail).toContain('Blade 2 at the low stop: 13.75°; 13.2° to 13.6° is asked for, 0.15° too much.');
    expect(out.detail).toMatch(/The blades differ by [\d.]+° at the low stop; 0.2° is allowed/);
  });

  it('stand on the traveler while they are open, and in words and with their numbers once they are signed', async () => {
    const paper = async () => {
      const answer = await fetch(`${shop.address}/api/travelers/${travelerId}/pdf`, {
        headers: { cookie: technician.cookie },
      });
      return (await readPdf(Buffer.from(await answer.arrayBuffer()))).text;
    };
    expect(await paper()).toContain('blade 3, high stop');
    expect((await technician.call(signStep, entry)).status).toBe(200);
    const signed = (await own()).steps.find(({ id }) => id === entry.stepId)?.signOffs[0]?.sheet;
    expect(signed).toMatchObject({
      kind: 'angles',
      reasons: [],
      drawn: { kind: 'angles', readings: angles().readings },
    });
    expect(signed?.said).toContainEqual({ name: 'cycled on air', value: '10 times, 10 asked for' });
    expect(await paper()).toMatch(
      /low stop: blade 1 13\.\d+°, blade 2 13\.\d+°, blade 3 13\.\d+° \(13\.2° to 13\.6°\)/,
    );
  });

  it('a revision is refused whose angles are of another model’s application, of other blades, or of seals nobody lists', async () => {
    const { modelId, revisionId } = await job.workOrder();
    const { manualId } = await job.reads.manualRevision.findUniqueOrThrow({ where: { id: revisionId } });
    const foreign = await job.reads.application.findFirstOrThrow({ where: { airframe: 'Orrick Stormcrane' } });
    const content = await threeBladeContent(shop);
    const routes = (change: (sheet: SheetOf<'angles'>) => object) =>
      content.routes.map((route) => ({
        ...route,
        steps: route.steps.map((step) =>
          step.sheet?.kind === 'angles' ? { ...step, sheet: { ...step.sheet, ...change(step.sheet) } } : step,
        ),
      }));
    const route = content.routes.findIndex(({ steps }) => steps.some(({ sheet }) => sheet?.kind === 'angles'));
    const step = content.routes[route]?.steps.findIndex(({ sheet }) => sheet?.kind === 'angles');
    const at = `/models/0/routes/${route}/steps/${step}/sheet`;
    const visitor = await as(shop, 'inspector');
    const issue = (change: Parameters<typeof routes>[0], type: string, pointer: string) =>
      expectRefused(
        { shop, visitor },
        {
          operation: manualOperations.issueRevision,
          input: {
            ...{ manualId, revision: '9', issuedOn: '2026-06-01' },
            models: [{ ...content, routes: routes(change), modelId, tboRules: [], lifeLimits: [] }],
          },
        },
        { status: 422, type, pointer: `${at}${pointer}` },
      );
    const [first] = content.routes.flatMap(({ steps }) =>
      steps.flatMap(({ sheet }) => (sheet?.kind === 'angles' ? [sheet] : [])),
    );
    const stops = first?.applications[0]?.stops ?? [];
    await issue(
      () => ({ applications: [{ applicationId: foreign.id, stops }] }),
      'line-wrong',
      '/applications/0/applicationId',
    );
    await issue(() => ({ blades: 4 }), 'line-wrong', '/blades');
    await issue(() => ({ seals: ['tip cap O-ring'] }), 'line-wrong', '/seals');
    await issue(() => ({ protractor: { low: '0', high: '20' } }), 'invalid-input', '/protractor');
    await issue(
      ({ applications }) => ({ applications: [...applications, applications[0]] }),
      'invalid-input',
      '/applications',
    );
  });
});
