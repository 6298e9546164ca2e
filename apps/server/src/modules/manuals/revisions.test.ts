import { manualOperations } from '@hubwright/contracts/manuals/operations';
import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import { as, pin } from '../../../../../tests/support/people.ts';
import { expectRefused } from '../../../../../tests/support/refused.ts';
import { ShopApp, type Visitor } from '../../../../../tests/support/shop-app.ts';
import { Database } from '../../platform/database/client.ts';
import { currentRevision, kitListFor, requireCurrentRevision, routesFor } from './public.ts';

const { issueRevision, checkCurrency, listManuals, showRevision, listModels } = manualOperations;

describe('revisions of a manual', () => {
  let shop: ShopApp;
  let inspector: Visitor;
  beforeAll(async () => {
    shop = await ShopApp.open('shop');
    inspector = await as(shop, 'inspector');
  });
  afterAll(() => shop.close());

  const manual = async (number: string) => {
    const { rows } = (await inspector.call(listManuals, { search: number })).body;
    return rows[0] as (typeof rows)[number];
  };
  const model = async (designation: string) => {
    const { rows } = (await inspector.call(listModels, { search: designation })).body;
    return rows[0] as (typeof rows)[number];
  };
  const inTransaction = <T>(body: (tx: Parameters<typeof currentRevision>[0]) => Promise<T>) =>
    shop.running.app.get(Database).prisma.$transaction(body);

  const line = {
    part: 'V14-11',
    position: 'body O-rings',
    scopes: ['governor'],
    per: 'unit',
    quantity: 3,
    source: 'new',
  };
  const step = {
    title: 'Clean',
    process: 'cleaning',
    level: 'perform',
    kind: 'work',
    phase: 'evaluation',
    standardMinutes: 20,
  };
  const route = { partClass: 'assembly', title: 'Governor', scopes: ['governor'], steps: [step] };
  const revisionOf = async (change: Record<string, unknown> = {}) => {
    const { id: modelId, manual: of } = await model('VG14');
    const content = {
      modelId,
      kitList: [line],
      routes: [route],
      tboRules: [{ months: 72, requirement: 'recommended' }],
    };
    return { manualId: of.id, revision: '8', issuedOn: '2026-01-05', models: [{ ...content, ...change }] };
  };

  it('are current one at a time, the newest entered', async () => {
    const { revisions } = await manual('QOM-301');
    expect(revisions.map(({ revision, state }) => [revision, state])).toEqual([
      ['5', 'current'],
      ['4', 'superseded'],
    ]);
    expect(revisions[0]?.currencyCheckedBy).toBe('Bram Ostler');
  });

  it('show kit list, routes with limits and times between overhauls as they were entered', async () => {
    const { revisions } = await manual('QOM-301');
    const detail = (await inspector.call(showRevision, { revisionId: revisions[0]?.id ?? '' })).body;
    const [q3c] = detail.models;
    expect(q3c?.designation).toBe('Q3C-76');
    expect(q3c?.kitList.find(({ position }) => position === 'piston dust seal')).toMatchObject({
      part: 'Q301-17',
      serialFrom: 'QA1400',
      source: 'new',
    });
    const blade = q3c?.routes.find(({ title }) => title === 'Aluminium blade');
    const widths = blade?.steps.find(({ title }) => title === 'Measure blade by station')?.measures;
    expect(widths?.find(({ name }) => name === 'width at 36 in')).toEqual({
      name: 'width at 36 in',
      dimension: 'width',
      station: '36',
      byDiameter: [],
      oversizes: [],
      unit: 'in',
      decimals: 3,
      method: 'absolute',
      low: '4.402',
    });
    expect(q3c?.tboRules).toHaveLength(4);
  });

  it('explode into the kit of one unit, by serial, scope and blade', async () => {
    const { id: modelId, manual: of } = await model('Q3C-76');
    const ask = (serial: string | null, scope: 'overhaul' | 'reseal') =>
      inTransaction(async (tx) =>
        kitListFor(tx, { revisionId: (await currentRevision(tx, of.id)).id, modelId, scope, serial, bladeCount: 3 }),
      );
    const late = await ask('QA1400', 'overhaul');
    const early = await ask('QA1399', 'overhaul');
    expect(late.lines.length).toBe(early.lines.length + 1);
    expect(late.lines.filter(({ position }) => position.endsWith('clamp bolts'))).toEqual(
      [1, 2, 3].map((blade) =>
        expect.objectContaining({ position: `blade ${blade} clamp bolts`, quantity: 2, source: 'reused' }),
      ),
    );
    expect(late.lines.find(({ position }) => position === 'safety wire')).toMatchObject({ quantity: 180, minimum: 24 });
    const unread = await ask(null, 'overhaul');
    expect([unread.lines.length, unread.undecided.map(({ position }) => position)]).toEqual([
      early.lines.length,
      ['piston dust seal'],
    ]);
    const reseal = await ask('QA1400', 'reseal');
    expect(reseal.lines.some(({ position }) => position.includes('bearing balls'))).toBe(false);
    expect(reseal.lines.some(({ position }) => position === 'blade 2 shank O-ring')).toBe(true);
  });

  it('have one route per class and scope, steps in order', async () => {
    const { id: modelId, manual: of } = await model('Q3C-76');
    const routes = await inTransaction(async (tx) =>
      routesFor(tx, { revisionId: (await currentRevision(tx, of.id)).id, modelId, scope: 'overhaul' }),
    );
    const classes = routes.map(({ partClass }) => partClass);
    expect(classes).toEqual([...new Set(classes)]);
    for (const { steps } of routes) expect(steps.map(({ sequence }) => sequence)).toEqual(steps.map((_, i) => i + 1));
  });

  it('become current whole, supersede the one before, and wait for an inspector’s signature', async () => {
    const before = await manual('VOM-14');
    const [old] = before.revisions;
    const issued = await inspector.call(issueRevision, (await revisionOf()) as never);
    expect(issued.body).toMatchObject({ superseded: old?.id });
    const revisionId = issued.body.id;
    const [current] = (await manual('VOM-14')).revisions;
    expect(current).toMatchObject({ revision: '8', state: 'current', currencyCheckedOn: null });
    await expect(inTransaction((tx) => requireCurrentRevision(tx, old?.id ?? ''))).rejects.toThrow(
      'revision 8 is current',
    );
    await expect(inTransaction((tx) => requireCurrentRevision(tx, revisionId))).resolves.toBeUndefined();
    const signed = await inspector.call(checkCurrency, { revisionId, checkedOn: '2026-01-06', signature: pin });
    expect(signed.status).toBe(200);
    const stale = { revisionId: old?.id ?? '', checkedOn: '2026-01-06', signature: pin };
    const request = { operation: checkCurrency, input: stale };
    await expectRefused({ shop, visitor: inspector }, request, { status: 409, type: 'revision-superseded' });
    const wrongPin = {
      operation: checkCurrency,
      input: { revisionId, checkedOn: '2026-01-06', signature: { pin: '1357' } },
    };
    await expectRefused({ shop, visitor: inspector }, wrongPin, { status: 403, type: 'signature-refused' });
  });

  const wrong: readonly [string, Record<string, unknown>, string, string][] = [
    [
      'a part that does not exist',
      { kitList: [line, { ...line, part: 'V14-99' }] },
      'unknown-part',
      '/models/0/kitList/1/part',
    ],
    [
      'a line per blade of a governor',
      { kitList: [{ ...line, per: 'blade' }] },
      'line-wrong',
      '/models/0/kitList/0/per',
    ],
    [
      'a serial range that ends before it begins',
      { kitList: [{ ...line, serialFrom: 'VG9', serialTo: 'VG1' }] },
      'line-wrong',
      '/models/0/kitList/0/serialFrom',
    ],
    ['no pieces', { kitList: [{ ...line, quantity: 0 }] }, 'invalid-input', '/models/0/kitList/0/quantity'],
    [
      'more at least than at most',
      { kitList: [{ ...line, minimum: 4 }] },
      'invalid-input',
      '/models/0/kitList/0/minimum',
    ],
    [
      'two routes of one class and scope',
      { routes: [route, { ...route, title: 'Other' }] },
      'line-wrong',
      '/models/0/routes/1/scopes',
    ],
    [
      'a measured step without measures',
      { routes: [{ ...route, steps: [{ ...step, kind: 'measure' }] }] },
      'invalid-input',
      '/models/0/routes/0/steps/0/measures',
    ],
    [
      'a process the shop does not know',
      { routes: [{ ...route, steps: [{ ...step, process: 'wishing' }] }] },
      'invalid-input',
      '/models/0/routes/0/steps/0/process',
    ],
    [
      'a rule without hours or months',
      { tboRules: [{ requirement: 'required' }] },
      'invalid-input',
      '/models/0/tboRules/0',
    ],
    [
      'a model of another manual',
      { modelId: '0199a055-0000-7000-8000-000000000000' },
      'line-wrong',
      '/models/0/modelId',
    ],
  ];
  it.each(wrong)('are refused whole for %s', async (_, change, type, pointer) => {
    const input = { ...(await revisionOf(change)), revision: '9' };
    await expectRefused(
      { shop, visitor: inspector },
      { operation: issueRevision, input },
      { status: 422, type, pointer },
    );
  });

  it('are not entered twice, nor by the parts room', async () => {
    const input = { ...(await revisionOf()), revision: '7' };
    const request = { operation: issueRevision, input };
    await expectRefused({ shop, visitor: inspector }, request, {
      status: 409,
      type: 'already-exists',
      pointer: '/revision',
    });
    await expectRefused({ shop, visitor: await as(shop, 'parts-room') }, request, {
      status: 403,
      type: 'not-permitted',
    });
  });

  it('belong to models with applications and flat rates', async () => {
    const manager = await as(shop, 'manager');
    const { id: modelId } = await model('Q2C-72');
    const before = (await manager.call(manualOperations.showModel, { modelId })).body;
    expect(before.applications[0]?.settings).toMatchObject({ 'reference station': '30 in' });
    const rate = { modelId, scope: 'overhaul' as const, labourMinutes: 1_600, labourMinor: 330_000 };
    await manager.call(manualOperations.setFlatRate, rate);
    const after = (await manager.call(manualOperations.showModel, { modelId })).body;
    expect(after.flatRates.find(({ scope }) => scope === 'overhaul')).toMatchObject({
      labourMinutes: 1_600,
      labourMinor: 330_000,
    });
    expect(after.flatRates).toHaveLength(before.flatRates.length);
    const governor = {
      kind: 'governor' as const,
      maker: 'Vexley',
      designation: 'VG15',
      material: 'aluminium' as const,
      pitch: 'none' as const,
    };
    const input = { ...governor, bladeCount: 2, identityCarriedBy: 'plate' as const, manualId: before.manual.id };
    const request = { operation: manualOperations.addModel, input };
    await expectRefused({ shop, visitor: manager }, request, {
      status: 422,
      type: 'invalid-input',
      pointer: '/bladeCount',
    });
  });
});
