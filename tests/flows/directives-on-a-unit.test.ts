// size: one story told in order; each step stands on the one before
import { directiveOperations as op } from '@hubwright/contracts/directives/operations';
import type { Sent } from '@hubwright/contracts/operation';
import { quoteOperations } from '@hubwright/contracts/quotes/operations';
import { releaseOperations } from '@hubwright/contracts/releases/operations';
import { unitOperations } from '@hubwright/contracts/units/operations';
import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import { closeBuild } from '../../apps/server/src/modules/work-orders/close-build.command.ts';
import { readsOf } from '../support/arrivals.ts';
import { day } from '../support/days.ts';
import { Job } from '../support/job.ts';
import { as, pin } from '../support/people.ts';
import { ShopApp, type Visitor } from '../support/shop-app.ts';

type Given = Sent<typeof op.issueDirective>;

describe('directives that concern a unit', () => {
  let shop: ShopApp;
  let inspector: Visitor;
  let approver: Visitor;
  let desk: Visitor;
  let modelId: string;
  let job: Job;
  let recurring: string;

  beforeAll(async () => {
    shop = await ShopApp.open('shop');
    [inspector, approver, desk] = [
      await as(shop, 'inspector'),
      await as(shop, 'sunniva'),
      await as(shop, 'front-desk'),
    ];
    modelId = (await readsOf(shop).unitModel.findFirstOrThrow({ where: { designation: 'VG14' } })).id;
  });
  afterAll(() => shop.close());

  const given = (changes: Partial<Given> = {}): Given => ({
    ...{ kind: 'airworthiness-directive', number: 'D-2026-11', title: 'Spring seat', issuer: 'the authority' },
    ...{ issuedOn: '2026-01-10', effectiveOn: '2026-02-01', binding: 'required', repeats: 'recurring' },
    ...{ everyHoursTenths: 5_000, everyMonths: 12, action: 'Look at the spring seat under light.' },
    ...{ terminatingAction: 'Fit the seat of the later pattern.', labourMinor: 18_500 },
    lines: [{ modelId, serialFrom: 'VG7000', serialTo: 'VG7999' }],
    signature: pin,
    ...changes,
  });
  const once: Partial<Given> = {
    repeats: 'one-time',
    everyHoursTenths: undefined,
    everyMonths: undefined,
    terminatingAction: undefined,
  };
  const issue = async (changes: Partial<Given> = {}) => {
    const answer = await inspector.call(op.issueDirective, given(changes));
    expect(answer.status).toBe(200);
    return answer.body.id;
  };
  const standings = async (of = job) =>
    (await desk.call(op.workOrderDirectives, { workOrderId: of.id })).body.standings;
  const openNames = async () => {
    const { body } = await approver.call(releaseOperations.releaseChecklist, { workOrderId: job.id });
    return body.open.filter(({ kind }) => kind === 'directive');
  };
  const record = (directiveId: string, more: object = {}) =>
    inspector.call(op.recordCompliance, {
      ...{ workOrderId: job.id, directiveId, itemId: job.unitId, outcome: 'done' as const, signature: pin },
      ...{ method: 'Looked at by 7.2 of the bulletin: no crack', ...more },
    });

  it('are put on record as they read, by an inspector; what contradicts itself is refused at its field', async () => {
    const refused = async (changes: Partial<Given>) => (await inspector.call(op.issueDirective, given(changes))).body;
    const wrong = { type: '/problems/directive-wrong' };
    expect(await refused({ everyHoursTenths: undefined, everyMonths: undefined })).toMatchObject(wrong);
    expect(await refused({ binding: 'recommended' })).toMatchObject({ ...wrong, errors: [{ pointer: '/binding' }] });
    expect(await refused({ effectiveOn: '2026-01-09' })).toMatchObject({
      ...wrong,
      errors: [{ pointer: '/effectiveOn' }],
    });
    expect(await refused({ lines: [{ serialFrom: 'VG1' }] })).toMatchObject({
      ...wrong,
      errors: [{ pointer: '/lines/0' }],
    });
    expect(await refused({ lines: [{ modelId, serialFrom: 'VG2', serialTo: 'VG1' }] })).toMatchObject(wrong);
    expect((await desk.call(op.issueDirective, given())).status).toBe(403);
    recurring = await issue();
    expect(await refused({})).toMatchObject({ type: '/problems/directive-known' });
    await issue({ ...once, number: 'D-2026-12', lines: [{ modelId, serialFrom: 'VG8000', serialTo: 'VG8999' }] });
    const { body } = await desk.call(op.listDirectives, { modelId });
    expect(body.rows).toMatchObject([
      {
        number: 'D-2026-11',
        revision: 'original',
        issuedBy: 'Bram Ostler',
        lines: [{ model: { designation: 'VG14' }, serialFrom: 'VG7000' }],
      },
      { number: 'D-2026-12' },
    ]);
  });

  it('apply by serial range and are named by the quote at the shop’s price', async () => {
    const application = await readsOf(shop).application.findFirstOrThrow({
      where: { modelId, airframe: 'Heronby Courser 4' },
    });
    job = await Job.arrived(shop, 'VG7301', { modelId, applicationId: application.id, parts: [] });
    expect(await standings()).toMatchObject([
      { directive: { number: 'D-2026-11' }, item: 'the unit', state: 'open' },
      { directive: { number: 'D-2026-12' }, state: 'not-applicable' },
    ]);
    const { body } = await desk.call(quoteOperations.priceWork, { workOrderId: job.id, kind: 'estimate' });
    expect(body.lines.filter(({ kind }) => kind === 'directive')).toMatchObject([
      {
        description: 'D-2026-11 of 2026-01-10, Spring seat, the unit: It applies and is not done',
        amountMinor: 18_500,
      },
    ]);
    await job.inWork();
    const quote = await readsOf(shop).quote.findFirstOrThrow({
      where: { workOrderId: job.id, kind: 'firm' },
      include: { lines: true },
    });
    expect(quote.lines.filter(({ kind }) => kind === 'directive').map(({ amountMinor }) => amountMinor)).toEqual([
      18_500,
    ]);
  }, 60_000);

  it('hold the release by name while open or undecided, with who can close them', async () => {
    const doubtful = await issue({
      ...once,
      number: 'D-2026-13',
      title: 'Drive gear',
      lines: [{ modelId, partNumber: 'V-DG-9' }],
    });
    await issue({
      ...once,
      kind: 'service-bulletin',
      binding: 'recommended',
      number: 'VSB-4',
      issuer: 'Vexley',
      lines: [{ modelId }],
    });
    await job.signed('repair');
    await job.takenOff();
    await job.signed('build');
    await job.filled();
    await shop.run(closeBuild, { workOrderId: job.id, signature: pin }, job.people.technician);
    await job.signed('final');
    const open = await openNames();
    expect(open.map(({ what }) => what)).toEqual([
      'D-2026-11, Spring seat: the unit. It applies and is not done',
      'D-2026-13, Drive gear: the unit. Look: whether V-DG-9 is fitted is not on record',
    ]);
    expect(open[0]?.closedBy.people).toContain('Bram Ostler');
    const refused = await approve();
    expect(refused.body).toMatchObject({
      type: '/problems/release-blocked',
      detail: expect.stringContaining('D-2026-11'),
    });

    const sure = await record(recurring, { outcome: 'does-not-apply', method: 'not this one' });
    expect(sure.body).toMatchObject({ type: '/problems/directive-not-open' });
    const looked = await record(doubtful, {
      outcome: 'does-not-apply',
      method: 'The gear is V-DG-7, seen at teardown',
    });
    expect(looked.body).toMatchObject({ state: 'not-applicable' });
    expect((await openNames()).length).toBe(1);
  }, 60_000);

  it('may be put off only where the directive says so, as long as it says, by who approves', async () => {
    const defer = (directiveId: string, until: string, who = approver) =>
      who.call(op.deferDirective, {
        workOrderId: job.id,
        directiveId,
        itemId: job.unitId,
        until,
        reason: 'No seat in stock',
        signature: pin,
      });
    expect((await defer(recurring, day(3))).body).toMatchObject({ type: '/problems/deferral-not-allowed' });
    const allowed = await issue({ ...once, number: 'D-2026-14', deferDays: 30, lines: [{ modelId }] });
    // It came after the customer agreed to the firm quote, which has the other one.
    const { body: more } = await desk.call(quoteOperations.priceWork, { workOrderId: job.id, kind: 'over-and-above' });
    expect(more.lines).toMatchObject([
      { kind: 'directive', description: expect.stringContaining('D-2026-14'), amountMinor: 18_500 },
    ]);
    await job.approved('over-and-above');
    const { body: none } = await desk.call(quoteOperations.priceWork, { workOrderId: job.id, kind: 'over-and-above' });
    expect(none.lines).toEqual([]);
    expect((await defer(allowed, day(31))).body).toMatchObject({ errors: [{ pointer: '/until' }] });
    expect((await defer(allowed, day(30))).body).toMatchObject({ state: 'deferred' });
    expect((await openNames()).map(({ what }) => what)).toEqual([expect.stringContaining('D-2026-11')]);
  });

  it('are complied with by a method signed on the work order; the release opens and its record says it', async () => {
    const bad = async (more: object) => (await record(recurring, more)).body;
    expect(await bad({ doneOn: day(-1) })).toMatchObject({ errors: [{ pointer: '/doneOn' }] });
    expect(await bad({ outcome: 'found-done', doneOn: day(1) })).toMatchObject({ type: '/problems/date-ahead' });
    expect(await bad({ outcome: 'found-done', doneOn: day(-9), hoursTenths: 900_000 })).toMatchObject({
      errors: [{ pointer: '/hoursTenths' }],
    });
    expect((await record(recurring)).body).toMatchObject({ state: 'complied' });
    expect((await record(recurring, { outcome: 'taken-back', method: 'Wrong unit' })).body).toMatchObject({
      state: 'open',
    });
    expect((await openNames()).length).toBe(1);
    expect((await record(recurring)).body).toMatchObject({ state: 'complied' });
    const signOff = await readsOf(shop).signOff.findFirstOrThrow({
      where: { workOrderId: job.id, subjectId: recurring, result: 'done' },
    });
    expect(JSON.parse(signOff.content)).toMatchObject({
      directive: { number: 'D-2026-11', issuedOn: '2026-01-10' },
      item: { serial: 'VG7301' },
      method: 'Looked at by 7.2 of the bulletin: no crack',
    });
    expect(await openNames()).toEqual([]);
    const released = await approve();
    expect([released.status, released.body]).toMatchObject([200, { word: 'overhauled' }]);
    const { body } = await desk.call(releaseOperations.release, { releaseId: released.body.releaseId });
    const said = body.content.dataReferences.filter((one) => one.startsWith('D-2026'));
    expect(said).toEqual(
      expect.arrayContaining([
        expect.stringMatching(
          /^D-2026-11 of 2026-01-10, Spring seat, the unit: complied with\. Done on .*; again at 2600\.4 h since new or after .*, whichever comes first\. Looked at by 7\.2/,
        ),
        expect.stringMatching(/^D-2026-14 .*: deferred\. Put off until .* No seat in stock$/),
      ]),
    );
    const again = await record(recurring);
    expect(again.body).toMatchObject({ type: '/problems/wrong-state' });
  }, 60_000);

  it('fall due again on the unit, by its hours before its year is over', async () => {
    const { body } = await desk.call(op.unitDirectives, { unitId: job.unitId });
    expect(body.standings.find(({ directive }) => directive.number === 'D-2026-11')).toMatchObject({
      state: 'complied',
      untilHoursTenths: 26_004,
    });
    expect(body.firstDue).toMatchObject({ hoursTenths: 26_004 });
    const times = await readsOf(shop).serializedItem.findUniqueOrThrow({ where: { id: job.unitId } });
    const established = {
      itemId: job.unitId,
      sinceNewTenths: 26_004,
      sinceOverhaulTenths: 5_000,
      basis: 'logbook',
      signature: pin,
    };
    const flown = await inspector.call(unitOperations.establishTimes, established, { version: times.version });
    expect(flown.status).toBe(200);
    const later = (await desk.call(op.unitDirectives, { unitId: job.unitId })).body.standings;
    expect(later[0]).toMatchObject({
      directive: { number: 'D-2026-11' },
      state: 'open',
      reason: 'Fell due again at 2600.4 h since new',
    });
  });

  it('are superseded by a revision that gives credit, and stand again when it is withdrawn', async () => {
    const revised = await issue({ ...once, revision: 'A', supersedes: [recurring], credits: [recurring] });
    const of = async () =>
      (await desk.call(op.unitDirectives, { unitId: job.unitId })).body.standings.filter(
        ({ directive }) => directive.number === 'D-2026-11',
      );
    expect(await of()).toMatchObject([
      { directive: { revision: 'A' }, state: 'complied' },
      { directive: { revision: 'original' }, state: 'not-applicable', reason: 'Superseded by D-2026-11 rev. A' },
    ]);
    const withdrawn = await inspector.call(
      op.withdrawDirective,
      { directiveId: revised, reason: 'issued in error', signature: pin },
      { version: 1 },
    );
    expect(withdrawn.status).toBe(200);
    expect(await of()).toMatchObject([{ directive: { revision: 'original' }, state: 'open' }]);
  });

  async function approve() {
    const { version } = await job.workOrder();
    return approver.call(releaseOperations.approveRelease, { workOrderId: job.id, signature: pin }, { version });
  }
});
