// size: one story told in order; each step stands on the one before

import { findingOperations } from '@hubwright/contracts/findings/operations';
import type { Sent } from '@hubwright/contracts/operation';
import { releaseOperations } from '@hubwright/contracts/releases/operations';
import { dimensionOperations } from '@hubwright/contracts/work-orders/dimension-operations';
import { touchUpOperations } from '@hubwright/contracts/work-orders/touch-up-operations';
import { travelerOperations } from '@hubwright/contracts/work-orders/traveler-operations';
import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import { installFromTray } from '../../apps/server/src/modules/kits/install-from-tray.command.ts';
import { issueLot } from '../../apps/server/src/modules/kits/issue-lot.command.ts';
import { closeBuild } from '../../apps/server/src/modules/work-orders/close-build.command.ts';
import { fourBlade } from '../support/arrivals.ts';
import { Job } from '../support/job.ts';
import { as, pin } from '../support/people.ts';
import { expectRefused } from '../support/refused.ts';
import { ShopApp, type Visitor } from '../support/shop-app.ts';

const { signStep, traveler } = travelerOperations;
type Sheet = Extract<Sent<typeof signStep>['sheet'], { kind: 'static-balance' }>;

/** The right is heavy by 120 g-in with blade 1 up; level the other way. */
const before = {
  vertical: { heavy: 'right', weight: '24', radius: '5' },
  horizontal: { heavy: 'level' },
} as const;
/** 12 g-in, then level. */
const after = { vertical: { heavy: 'right', weight: '2.4', radius: '5' }, horizontal: { heavy: 'level' } } as const;
const washers = [
  { place: 'W4', part: 'Q-BW-1', pieces: 1 },
  { place: 'W5', part: 'Q-BW-1', pieces: 2 },
  { place: 'W6', part: 'Q-BW-1', pieces: 1 },
];
const sheet: Sheet = { kind: 'static-balance', before, found: [], placed: washers, after };

describe('a propeller on the balance stand', () => {
  let shop: ShopApp;
  let technician: Visitor;
  let job: Job;
  let entry: Awaited<ReturnType<Job['entryFor']>>;
  const head = () => job.nextAt('assembly');
  const signedUpTo = async (title: string) => {
    for (let step = await head(); !step.title.startsWith(title); step = await head()) await job.sign(step);
  };
  beforeAll(async () => {
    shop = await ShopApp.open('shop');
    technician = await as(shop, 'technician');
    job = await Job.arrived(shop, 'SB2001');
    await job.inWork();
    await job.takenOff();
    await job.signed('repair');
    await job.filled();
    await signedUpTo('Static balance');
    entry = await job.entryFor(await head());
  }, 120_000);
  afterAll(() => shop.close());

  const refused = (changed: Partial<Sheet>, type: string, status: number, pointer?: string) =>
    expectRefused(
      { shop, visitor: technician },
      { operation: signStep, input: { ...entry, sheet: { ...sheet, ...changed } } },
      { status, type, ...(pointer ? { pointer } : {}) },
    );

  it('is a step of the build, after every blade is painted, and signed with what must be on it', async () => {
    const step = await head();
    expect([step.phase, (step.form as { name: string }[]).map(({ name }) => name)]).toEqual([
      'build',
      ['paint finished', 'boots on', 'decals on'],
    ]);
    await expectRefused(
      { shop, visitor: technician },
      { operation: signStep, input: { ...entry, form: entry.form.slice(0, 2) } },
      { status: 422, type: 'form-missing' },
    );
  });

  it('takes no place, piece or count that the manual does not have', async () => {
    await refused(
      { placed: [{ place: 'W7', part: 'Q-BW-1', pieces: 1 }] },
      'sheet-wrong',
      422,
      '/sheet/placed/0/place',
    );
    await refused(
      { placed: [{ place: 'W1', part: 'Q301-37', pieces: 1 }] },
      'sheet-wrong',
      422,
      '/sheet/placed/0/part',
    );
    const seven = { placed: [{ place: 'W1', part: 'Q-BW-1', pieces: 7 }] };
    const { detail } = await refused(seven, 'sheet-wrong', 422, '/sheet/placed/0/pieces');
    expect(detail).toBe('W1 has 7 pieces; 6 is the most.');
  });

  it('takes no reading that is missing or in another unit', async () => {
    const level = { heavy: 'level' } as const;
    const missing = { vertical: { heavy: 'left' } as const, horizontal: level };
    await refused({ before: missing }, 'sheet-wrong', 422, '/sheet/before/vertical/weight');
    const hundredfold = { vertical: { heavy: 'right', weight: '2400', radius: '5' } as const, horizontal: level };
    const { detail } = await refused({ before: hundredfold }, 'sheet-wrong', 422, '/sheet/before/vertical/weight');
    expect(detail).toMatch(/100 times the limit or more: is it in the unit of the manual/);
    await refused({ after: hundredfold }, 'sheet-wrong', 422, '/sheet/after/vertical/weight');
  });

  it('has on it what went through its kit, piece for piece', async () => {
    const { detail } = await refused({}, 'weights-not-on-unit', 409, '/sheet/placed');
    expect(detail).toBe('Q-BW-1: 4 named here, 0 on the unit');
    const line = await job.reads.kitLine.findFirstOrThrow({
      where: { kitId: job.kitId, part: { number: 'Q-BW-1' } },
    });
    const put = { kitId: job.kitId, lineId: line.id, lotCode: await job.onShelf(line.partId, 4), quantity: 4 };
    await shop.run(issueLot, put, job.people.clerk);
    await shop.run(installFromTray, put, job.people.technician);
    await refused({ placed: washers.slice(0, 1) }, 'weights-not-on-unit', 409);
  });

  it('is not signed as good while more is left than the manual allows', async () => {
    const heavy = { ...after, vertical: { heavy: 'right', weight: '9.1', radius: '5' } } as const;
    const { detail } = await refused({ after: heavy }, 'outside-limits', 409);
    expect(detail).toContain('What is left with blade 1 up is 45.5 g-in; 45 g-in is allowed.');
  });

  it('keeps readings, weights and limit in the signature', async () => {
    const signed = await technician.call(signStep, { ...entry, sheet });
    expect(signed.status).toBe(200);
    const { steps } = (await technician.call(traveler, { travelerId: signed.body.travelerId })).body;
    const said = steps.find(({ id }) => id === entry.stepId)?.signOffs[0]?.sheet?.said;
    expect(said).toContainEqual({ name: 'weights now', value: 'W4: 1 × Q-BW-1, W5: 2 × Q-BW-1, W6: 1 × Q-BW-1' });
    expect(said).toContainEqual({ name: 'blade 1 up, after', value: 'the right is heavy by 12 g-in (2.4 at 5)' });
    expect(said).toContainEqual({ name: 'limit', value: '45 g-in each, by the manual' });
  });

  describe('touched up after it was balanced', () => {
    const input = () => ({
      ...{ workOrderId: job.id, where: 'blade 2, 30 in', paint: 'grey, lot P-14', reason: 'scratched at the hoist' },
      signature: pin,
    });
    const open = async () =>
      (await technician.call(releaseOperations.releaseChecklist, { workOrderId: job.id })).body.open.map(
        ({ what }) => what,
      );

    it('is signed only by who may coat, under their own PIN', async () => {
      await shop.run(closeBuild, { workOrderId: job.id, signature: pin }, job.people.technician);
      await job.signed('final');
      expect(await open()).toEqual([]);
      const desk = await as(shop, 'front-desk');
      const asDesk = { operation: touchUpOperations.touchUp, input: input() };
      await expectRefused({ shop, visitor: desk }, asDesk, { status: 403, type: 'not-permitted' });
      const blank = { operation: touchUpOperations.touchUp, input: { ...input(), reason: ' ' } };
      await expectRefused({ shop, visitor: technician }, blank, {
        status: 422,
        type: 'invalid-input',
        pointer: '/reason',
      });
    });

    it('comes back open, with the inspection signed on its strength, and nothing is released meanwhile', async () => {
      const painter = await as(shop, 'maren');
      const { status, body } = await painter.call(touchUpOperations.touchUp, input());
      expect(status).toBe(200);
      expect(body).toMatchObject({
        stage: 'build',
        again: [
          'Static balance, vertical and horizontal, again after touch-up',
          'Final inspection, again after touch-up',
        ],
      });
      expect((await open()).join()).toMatch(/Static balance, vertical and horizontal, again after touch-up/);
      await expectRefused(
        { shop, visitor: technician },
        { operation: travelerOperations.closeBuild, input: { workOrderId: job.id, signature: pin } },
        { status: 409, type: 'build-steps-open' },
      );
    });

    it('is balanced again with what it has on it, closed and inspected again', async () => {
      const again = await job.entryFor(await head());
      const found = { ...sheet, before: after, found: washers };
      expect((await technician.call(signStep, { ...again, sheet: found })).status).toBe(200);
      await shop.run(closeBuild, { workOrderId: job.id, signature: pin }, job.people.technician);
      await job.signed('final');
      expect(await open()).toEqual([]);
    });

    it('comes back once for each touch-up, and not while it is open already', async () => {
      const painter = await as(shop, 'maren');
      const first = await painter.call(touchUpOperations.touchUp, input());
      const second = await painter.call(touchUpOperations.touchUp, input());
      expect([first.body.again.length, second.body.again]).toEqual([2, []]);
    });
  });
});

describe('a coating that is signed after the balance', () => {
  let shop: ShopApp;
  let job: Job;
  beforeAll(async () => {
    shop = await ShopApp.open('shop');
    job = await Job.arrived(shop, 'SB2002');
    await job.inWork();
    await job.takenOff();
    await job.signed('repair');
    await job.filled();
    await job.signed('build');
  }, 120_000);
  afterAll(() => shop.close());

  it('brings it back behind what is signed, though nobody asked for it', async () => {
    const [technician, inspector] = [await as(shop, 'technician'), await as(shop, 'inspector')];
    const blade = await job.reads.traveler.findFirstOrThrow({ where: { workOrderId: job.id, position: 'blade 2' } });
    const of = {
      travelerId: blade.id,
      area: 'airfoil',
      damage: 'nicked',
      place: 'station 30',
      description: 'at the hoist',
    };
    const { body: finding } = await technician.call(findingOperations.raiseFinding, of as never);
    const steps = [{ title: 'Touch in paint', process: 'coating', standardMinutes: 10 }];
    const decided = { findingId: finding.id, disposition: 'repair', steps, signature: pin } as const;
    const answer = await inspector.call(findingOperations.disposeFinding, decided as never, { version: 1 });
    expect(answer.status).toBe(200);
    await expect(job.nextAt('assembly')).resolves.toMatchObject({ process: 'final-inspection' });
    const painting = await job.nextAt('blade 2');
    expect((await (await as(shop, 'maren')).call(signStep, await job.entryFor(painting))).status).toBe(200);
    await expect(job.nextAt('assembly')).resolves.toMatchObject({
      title: 'Static balance, vertical and horizontal, again after Touch in paint',
      phase: 'build',
      attempt: 2,
    });
    const close = { operation: travelerOperations.closeBuild, input: { workOrderId: job.id, signature: pin } };
    await expectRefused({ shop, visitor: technician }, close, { status: 409, type: 'build-steps-open' });
  });
});

describe('blades matched by static moment', () => {
  let shop: ShopApp;
  let job: Job;
  const moments = ['397.0', '397.6', '398.2', '398.1'];
  beforeAll(async () => {
    shop = await ShopApp.open('shop');
    job = await Job.arrived(shop, 'SB4001', await fourBlade(shop, 'SB4001'));
    await job.inWork();
    for (const [i, moment] of moments.entries()) {
      const position = `blade ${i + 1}`;
      let step = await job.nextAt(position);
      for (; step.title !== 'Measure static moment'; step = await job.nextAt(position)) await job.sign(step);
      const technician = await as(shop, 'technician');
      const values = [{ measureId: step.measures[0]?.id ?? '', value: moment }];
      expect((await technician.call(signStep, await job.entryFor(step, values))).status).toBe(200);
    }
  }, 180_000);
  afterAll(() => shop.close());

  it('hold the build while two across the hub differ too much; each is within what the master allows', async () => {
    const inspector = await as(shop, 'inspector');
    const { body } = await inspector.call(dimensionOperations.workOrderDimensions, { workOrderId: job.id });
    const matched = body.spreads.filter(({ dimension }) => dimension === 'static-moment');
    expect(matched).toMatchObject([
      { among: 'opposite', master: null, verdict: 'fail', widest: { spread: '1.2', between: ['blade 1', 'blade 3'] } },
      { among: 'master', master: '398.0', verdict: 'pass', widest: { spread: '1', between: ['blade 1'] } },
    ]);
    expect(body.open).toContain('Static moment: blade 1 and blade 3 differ by 1.2, at most 0.8 is allowed');
  });
});
