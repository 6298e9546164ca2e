// size: one story told in order; each step stands on the one before
import { findingOperations as op } from '@hubwright/contracts/findings/operations';
import { quoteOperations } from '@hubwright/contracts/quotes/operations';
import { releaseOperations } from '@hubwright/contracts/releases/operations';
import { workOrderOperations } from '@hubwright/contracts/work-orders/operations';
import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import { issueLot } from '../../apps/server/src/modules/kits/issue-lot.command.ts';
import { returnFromTray } from '../../apps/server/src/modules/kits/return-from-tray.command.ts';
import { declineQuote } from '../../apps/server/src/modules/quotes/decline-quote.command.ts';
import { sendQuote } from '../../apps/server/src/modules/quotes/send-quote.command.ts';
import { writeQuote } from '../../apps/server/src/modules/quotes/write-quote.command.ts';
import { FILES, type FileStore } from '../../apps/server/src/platform/files/store.ts';
import { badValues, Job } from '../support/job.ts';
import { as, pin } from '../support/people.ts';
import { expectRefused } from '../support/refused.ts';
import { ShopApp, type Visitor } from '../support/shop-app.ts';

const blend = { title: 'Blend the nick', process: 'blade-repair' as const, standardMinutes: 30 };
const noticed = {
  area: 'leading-edge',
  damage: 'nicked' as const,
  place: 'leading edge, 20 in',
  description: 'a nick',
};

describe('a finding decided anew', () => {
  let shop: ShopApp;
  let job: Job;
  let technician: Visitor;
  let inspector: Visitor;
  let desk: Visitor;
  let washerId: string;
  const finding = async (findingId: string) => (await inspector.call(op.finding, { findingId })).body;
  const openKinds = async () => {
    const { open } = (await inspector.call(releaseOperations.releaseChecklist, { workOrderId: job.id })).body;
    return open;
  };
  const raised = async (position: string, found: object = noticed) => {
    const traveler = await job.reads.traveler.findFirstOrThrow({ where: { workOrderId: job.id, position } });
    return (await technician.call(op.raiseFinding, { ...noticed, ...found, travelerId: traveler.id })).body.id;
  };
  const decision = (findingId: string, more: object) => ({ findingId, ...more, signature: pin });
  const decided = async (findingId: string, more: object) => {
    const { version } = await finding(findingId);
    const answer = await inspector.call(op.disposeFinding, decision(findingId, more) as never, { version });
    expect(answer.status).toBe(200);
  };
  const anew = async (findingId: string, more: object) => ({
    operation: op.supersedeDisposition,
    input: decision(findingId, { reason: 'looked at again', ...more }),
    options: { version: (await finding(findingId)).version },
  });
  const supersede = async (findingId: string, more: object) => {
    const { operation, input, options } = await anew(findingId, more);
    const answer = await inspector.call(operation, input as never, options);
    expect(answer).toMatchObject({ status: 200 });
    return answer.body;
  };
  const offered = async (kind: 'over-and-above' | 'firm') => {
    const files = shop.running.app.get<FileStore>(FILES);
    const quote = await shop.run(writeQuote, { workOrderId: job.id, kind }, job.people.desk);
    return shop.run(sendQuote(files), { quoteId: quote.id }, job.people.desk, { version: quote.version });
  };
  const demand = (findingId: string) => job.reads.kitLine.findMany({ where: { findingId } });

  beforeAll(async () => {
    shop = await ShopApp.open('shop');
    [technician, inspector, desk] = [await as(shop, 'technician'), await as(shop, 'inspector'), await as(shop, 'desk')];
    job = await Job.arrived(shop, 'QT3001');
    await job.tornDown();
    washerId = (await job.reads.part.findUniqueOrThrow({ where: { number: 'Q301-37' } })).id;
  }, 120_000);
  afterAll(() => shop.close());

  it('needs a disposition to take the place of, a reason, the role and the version that was seen', async () => {
    const id = await raised('blade 1');
    await expectRefused({ shop, visitor: inspector }, await anew(id, { disposition: 'serviceable' }), {
      status: 409,
      type: 'finding-undecided',
    });
    await decided(id, { disposition: 'serviceable', note: 'polished out' });
    await expectRefused({ shop, visitor: inspector }, await anew(id, { disposition: 'serviceable', reason: ' ' }), {
      ...{ status: 422, type: 'invalid-input', pointer: '/reason' },
    });
    await expectRefused({ shop, visitor: technician }, await anew(id, { disposition: 'serviceable' }), {
      status: 403,
      type: 'not-permitted',
    });
    await expectRefused(
      { shop, visitor: inspector },
      { ...(await anew(id, { disposition: 'serviceable' })), options: { version: 1 } },
      { status: 412, type: 'out-of-date' },
    );
    const socket = await raised('hub', { area: 'blade-socket', damage: 'deformed' });
    await decided(socket, { disposition: 'serviceable' });
    await expectRefused({ shop, visitor: inspector }, await anew(socket, { disposition: 'repair', steps: [blend] }), {
      ...{ status: 409, type: 'repair-not-allowed' },
    });
  });

  it('keeps the earlier disposition with its reason, signs a new one that names it, and takes steps and parts back', async () => {
    const id = await raised('blade 1', { place: 'leading edge, 22 in' });
    const parts = [{ partId: washerId, position: 'beside the list', quantity: 2 }];
    await decided(id, { disposition: 'repair', steps: [blend], parts, labourMinor: 5_000, note: 'deep' });
    expect(await demand(id)).toHaveLength(1);
    const { signOffId } = await job.reads.finding.findUniqueOrThrow({ where: { id } });
    await supersede(id, { disposition: 'serviceable' });
    const row = await finding(id);
    expect(row).toMatchObject({ disposition: 'serviceable', labourMinor: 0, parts: [], done: true });
    expect(row.superseded).toEqual([
      expect.objectContaining({ disposition: 'repair', reason: 'looked at again', note: 'deep', labourMinor: 5_000 }),
    ]);
    expect(row.superseded[0]).toMatchObject({ steps: [blend.title], parts: [{ number: 'Q301-37', quantity: 2 }] });
    expect(row.steps.map(({ state }) => state)).toEqual(['not-needed']);
    expect(await demand(id)).toEqual([]);
    const stored = await job.reads.finding.findUniqueOrThrow({ where: { id } });
    const signOff = await job.reads.signOff.findUniqueOrThrow({ where: { id: stored.signOffId ?? '' } });
    expect(signOff).toMatchObject({ supersedesId: signOffId, result: 'serviceable' });
    expect(signOff.meaning).toContain('looked at again');
  });

  it('brings a rejected part back, with the work and the kit position that ended with it', async () => {
    const id = await raised('blade 2');
    const open = () => job.reads.travelerStep.count({ where: { traveler: { position: 'blade 2' }, state: 'open' } });
    const [before, kitBefore] = [await open(), await shape()];
    await decided(id, { disposition: 'reject' });
    expect(await open()).toBe(0);
    const { itemId } = await job.reads.traveler.findFirstOrThrow({
      where: { workOrderId: job.id, position: 'blade 2' },
    });
    const fitted = () => job.reads.installation.count({ where: { itemId, toDate: null } });
    expect(await fitted()).toBe(0);
    await supersede(id, { disposition: 'serviceable' });
    expect([await open(), await fitted(), await shape()]).toEqual([before, 1, kitBefore]);
    const traveler = await job.reads.traveler.findFirstOrThrow({
      where: { workOrderId: job.id, position: 'blade 2' },
    });
    expect(traveler.disposition).toBe('serviceable');
  });

  it('leaves a rejected part out once another took its place', async () => {
    const id = await raised('blade 3');
    await decided(id, { disposition: 'reject' });
    const replacement = { maker: 'Quillon', partNumber: 'Q76-B', serial: 'QB-3001-9' };
    await technician.call(op.fitReplacement, {
      ...{ ...replacement, findingId: id, sinceNewTenths: 1200, sinceOverhaulTenths: 'unknown' as const },
    });
    const refused = await expectRefused({ shop, visitor: inspector }, await anew(id, { disposition: 'serviceable' }), {
      status: 409,
      type: 'disposition-carried-out',
    });
    expect(refused.detail).toContain('QB-3001-9');
  });

  it('does not touch a firm quote that is with the customer or was said yes to', async () => {
    const id = await raised('hub', { area: 'outside', damage: 'corroded' });
    await decided(id, { disposition: 'repair', steps: [blend], labourMinor: 9_000 });
    await job.signed('evaluation');
    await offered('firm');
    const costs = await anew(id, { disposition: 'serviceable' });
    const sent = await expectRefused({ shop, visitor: inspector }, costs, { status: 409, type: 'disposition-paid' });
    expect(sent.detail).toContain('with the customer');
    await job.approved('firm');
    const paid = await expectRefused(
      { shop, visitor: inspector },
      { ...costs, options: { version: (await finding(id)).version } },
      { status: 409, type: 'disposition-paid' },
    );
    expect(paid.detail).toContain('is approved');
    expect(paid.next).toContain('new finding');
  }, 60_000);

  it('asks for issued parts back first', async () => {
    const id = await raised('blade 1', { place: 'tip' });
    const parts = [{ partId: washerId, position: 'beside the list', quantity: 1 }];
    await decided(id, { disposition: 'repair', steps: [blend], parts });
    const [line] = await demand(id);
    const lotCode = await job.onShelf(washerId, 1);
    const issue = { kitId: job.kitId, lineId: line?.id ?? '', lotCode, quantity: 1 };
    await shop.run(issueLot, issue, job.people.clerk);
    const refused = await expectRefused({ shop, visitor: inspector }, await anew(id, { disposition: 'serviceable' }), {
      status: 409,
      type: 'disposition-carried-out',
    });
    expect(refused.detail).toMatch(/Q301-37 .* lies in the tray of .*: bring it back to its bin first/);
    await shop.run(returnFromTray, { kitId: job.kitId, lotCode, bin: 'A-01' }, job.people.clerk);
    await supersede(id, { disposition: 'serviceable' });
    expect(await demand(id)).toEqual([]);
  }, 60_000);

  it('follows a no to over-and-above: the inspector’s open items name it, and deciding anew closes it', async () => {
    const id = await raised('blade 1', { place: 'trailing edge' });
    await decided(id, { disposition: 'repair', steps: [blend], labourMinor: 20_000 });
    const { number } = await finding(id);
    expect((await openKinds()).find(({ what }) => what.startsWith(number))?.closedBy.roles).toEqual(['front-desk']);
    const quote = await offered('over-and-above');
    const no = { quoteId: quote.id, decidedByName: 'Alder Brackenmoor', decidedAt: new Date().toISOString() };
    await shop.run(declineQuote, no, job.people.desk, { version: quote.version });
    expect(await finding(id)).toMatchObject({ answer: 'declined' });
    const item = (await openKinds()).find(({ what }) => what.startsWith(number) && what.includes('declined'));
    expect(item).toMatchObject({ kind: 'finding', subject: { kind: 'finding', id } });
    expect(item?.closedBy.people).toContain('Bram Ostler');
    const waiting = await inspector.call(op.listFindings, { workOrderId: job.id, state: 'undecided' });
    expect(waiting.body.rows.map((row) => row.number)).toEqual([number]);
    await supersede(id, { disposition: 'serviceable', reason: 'declined; within limits as it is' });
    expect((await openKinds()).filter(({ what }) => what.startsWith(number))).toEqual([]);
    expect((await job.nextAt('blade 1')).title).not.toBe(blend.title);
  }, 60_000);

  it('is not accepted as it is while a measured value is outside; an offer nobody answered is withdrawn', async () => {
    await job.signed('repair');
    const step = await measuredStep();
    const entry = await job.entryFor(step, badValues(step));
    const signer = step.level === 'perform' ? technician : inspector;
    const found = { area: 'general', damage: 'out-of-limits' as const, place: 'test', description: 'outside' };
    const failed = await signer.call(op.failStep, { ...entry, ...found, reason: undefined });
    expect(failed.status).toBe(200);
    const { id } = failed.body;
    await decided(id, { disposition: 'repair', labourMinor: 7_000 });
    const quote = await offered('over-and-above');
    await expectRefused({ shop, visitor: inspector }, await anew(id, { disposition: 'serviceable' }), {
      status: 409,
      type: 'still-outside-limits',
    });
    await supersede(id, { disposition: 'repair', reason: 'no charge', labourMinor: 0 });
    expect((await desk.call(quoteOperations.quote, { quoteId: quote.id })).body).toMatchObject({ state: 'superseded' });
  }, 120_000);

  it('or the unit goes back unrepaired: the desk ends the work, promised parts are free', async () => {
    const request = async () => ({
      operation: workOrderOperations.returnUnrepaired,
      input: { workOrderId: job.id, decidedByName: 'Alder Brackenmoor', reason: 'not worth the extra work' },
      options: { version: (await job.workOrder()).version },
    });
    await expectRefused({ shop, visitor: inspector }, await request(), { status: 403, type: 'not-permitted' });
    const { operation, input, options } = await request();
    const answer = await desk.call(operation, input, options);
    expect(answer.body).toMatchObject({ stage: 'returning-unrepaired', consent: 'declined' });
    expect(await job.reads.reservation.count({ where: { kitLine: { kitId: job.kitId } } })).toBe(0);
    await expectRefused({ shop, visitor: desk }, await request(), { status: 409, type: 'wrong-state' });
  });

  /** What the kit asks for, position by position. */
  async function shape() {
    const lines = await job.reads.kitLine.findMany({
      where: { kitId: job.kitId },
      orderBy: { sequence: 'asc' },
      select: { partId: true, position: true, quantity: true, source: true, findingId: true },
    });
    return lines;
  }

  /** The first step to measure that is left, everything before it signed. */
  async function measuredStep() {
    for (;;) {
      const step = (await job.nextSteps()).find(({ phase }) => phase === 'build');
      if (!step) throw new Error('Nothing is left to measure');
      if (step.kind === 'measure') return step;
      await job.sign(step);
    }
  }
});
