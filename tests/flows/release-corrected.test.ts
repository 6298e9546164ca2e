// size: one story told in order; each step stands on the one before
import { peopleOperations } from '@hubwright/contracts/people/operations';
import { releaseOperations as op } from '@hubwright/contracts/releases/operations';
import { unitOperations } from '@hubwright/contracts/units/operations';
import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import pg from 'pg';
import { issueRevision } from '../../apps/server/src/modules/manuals/issue-revision.command.ts';
import { changePerson } from '../../apps/server/src/modules/people/change-person.command.ts';
import { closeBuild } from '../../apps/server/src/modules/work-orders/close-build.command.ts';
import { vexleyGovernor } from '../../seed/data/manuals/vexley-governor.ts';
import { readsOf, unknownTimes } from '../support/arrivals.ts';
import { Job } from '../support/job.ts';
import { actorOf, as, pin } from '../support/people.ts';
import { readPdf } from '../support/read-pdf.ts';
import { expectRefused } from '../support/refused.ts';
import { ShopApp, type Visitor } from '../support/shop-app.ts';

const lifeLimits = [{ partNumber: 'vg14', hoursTenths: 30_000, cycles: 500 }];

describe('a governor with a limited life, its release, and the release put right', () => {
  let shop: ShopApp;
  let job: Job;
  let inspector: Visitor;
  let technician: Visitor;
  let first: string;
  let second: string;
  const checklist = async () => (await inspector.call(op.releaseChecklist, { workOrderId: job.id })).body;
  const lifeItem = async () => (await checklist()).open.filter(({ kind }) => kind === 'life-limit');
  const approve = async () => ({
    operation: op.approveRelease,
    input: { workOrderId: job.id, signature: pin },
    options: { version: (await job.workOrder()).version },
  });
  const times = async (said: object) => ({
    operation: unitOperations.establishTimes,
    input: {
      itemId: job.unitId,
      ...{ sinceNewTenths: 21_004, sinceOverhaulTenths: 'unknown', basis: 'engine logbook' },
      ...said,
      signature: pin,
    },
    options: { version: (await job.reads.serializedItem.findUniqueOrThrow({ where: { id: job.unitId } })).version },
  });
  const correction = (releaseId: string, more: object) => ({
    operation: op.correctRelease,
    input: { releaseId, reason: 'the address was left out', ...more, signature: pin },
  });
  const pdf = async (releaseId: string) => {
    const response = await fetch(`${shop.address}/api/releases/${releaseId}/pdf`, {
      headers: { cookie: inspector.cookie },
    });
    return readPdf(new Uint8Array(await response.arrayBuffer()));
  };
  const certificateOf = async (signInName: string, certificateNumber: string | null) => {
    const { id, version, displayName } = await job.reads.person.findUniqueOrThrow({ where: { signInName } });
    const input = { personId: id, displayName, certificateNumber, roles: ['inspector' as const], active: true };
    await shop.run(changePerson, input, await actorOf(shop, 'administrator'), { version });
  };

  beforeAll(async () => {
    shop = await ShopApp.open('shop');
    [inspector, technician] = [await as(shop, 'inspector'), await as(shop, 'technician')];
    const reads = readsOf(shop);
    const model = await reads.unitModel.findFirstOrThrow({ where: { designation: 'VG14' } });
    const application = await reads.application.findFirstOrThrow({
      where: { modelId: model.id, airframe: 'Heronby Courser 4' },
    });
    const models = [{ ...vexleyGovernor(), modelId: model.id, lifeLimits }];
    const revision = { manualId: model.manualId, revision: '8', issuedOn: '2026-01-05', models };
    await shop.run(issueRevision, revision as never, await actorOf(shop, 'inspector'));
    job = await Job.arrived(shop, 'VG6101', {
      ...{ modelId: model.id, applicationId: application.id, parts: [], scope: 'governor', times: unknownTimes },
    });
    await job.inWork();
    await job.signed('repair');
    await job.takenOff();
    await job.signed('build');
    await job.filled();
  }, 180_000);
  afterAll(() => shop.close());

  it('names who can take the unit on from where it is, by the state table', async () => {
    const stage = (await checklist()).open.find(({ kind }) => kind === 'stage');
    expect(stage).toMatchObject({ closedBy: { roles: ['technician', 'inspector'], people: [] } });
    await shop.run(closeBuild, { workOrderId: job.id, signature: pin }, job.people.technician);
    await job.signed('final');
  }, 60_000);

  it('keeps each part passed for use again as a signature of the inspector', async () => {
    const passed = await job.reads.signOff.findMany({ where: { workOrderId: job.id, subjectKind: 'lot' } });
    const reused = await job.reads.movement.count({ where: { fromKind: 'rack', toKind: 'unit', toRef: job.id } });
    expect(passed.length).toBe(reused);
    expect(reused).toBeGreaterThan(0);
    for (const signOff of passed)
      expect(signOff).toMatchObject({
        personId: job.people.inspector.personId,
        result: 'pass',
        authorisation: { process: 'dimensional-inspection', level: 'inspect' },
        contentHash: expect.stringMatching(/^[0-9a-f]{64}$/),
      });
  });

  it('is not released while the total of a life-limited part is unknown', async () => {
    const refused = await expectRefused({ shop, visitor: inspector }, await approve(), {
      status: 409,
      type: 'release-blocked',
    });
    expect((refused.open as { kind: string }[]).map(({ kind }) => kind)).toEqual(['life-limit']);
    expect(refused.detail).toContain('VG14 serial VG6101: limited to 3,000.0 h and 500 cycles since new');
    expect((await lifeItem())[0]?.closedBy.people).toContain('Bram Ostler');
    expect((await inspector.call(unitOperations.unitHistory, { itemId: job.unitId })).body.times).toHaveLength(1);
  });

  it('nor at its limit; times are established by an inspector from a paper, and never shrink', async () => {
    await expectRefused({ shop, visitor: technician }, await times({}), { status: 403, type: 'not-permitted' });
    await expectRefused(
      { shop, visitor: inspector },
      { ...(await times({})), options: { version: 77 } },
      { status: 412, type: 'out-of-date' },
    );
    await expectRefused({ shop, visitor: inspector }, await times({ basis: '' }), {
      ...{ status: 422, type: 'invalid-input', pointer: '/basis' },
    });
    const { operation, input, options } = await times({ sinceNewCycles: 500 });
    expect((await inspector.call(operation, input as never, options)).status).toBe(200);
    expect((await lifeItem())[0]?.what).toContain('life limit of 500 cycles is reached');
    await expectRefused({ shop, visitor: inspector }, await approve(), { status: 409, type: 'release-blocked' });
    await expectRefused({ shop, visitor: inspector }, await times({ sinceNewCycles: 499 }), {
      ...{ status: 422, type: 'hours-wrong', pointer: '/sinceNewCycles' },
    });
    await expectRefused({ shop, visitor: inspector }, await times({ sinceNewTenths: 20_000, sinceNewCycles: 500 }), {
      ...{ status: 422, type: 'hours-wrong', pointer: '/sinceNewTenths' },
    });
    await owner(shop, 'UPDATE life_limits SET cycles = 600');
    expect((await checklist()).open).toEqual([]);
  });

  it('is not released by someone without the number the authority asks for', async () => {
    await certificateOf('inspector', null);
    const refused = await expectRefused({ shop, visitor: inspector }, await approve(), {
      status: 409,
      type: 'record-incomplete',
    });
    expect(refused.detail).toContain('own certificate number');
    await certificateOf('inspector', 'DEMO-R-2204');
    const { rows } = (await inspector.call(peopleOperations.listPeople, {})).body;
    expect(rows.find(({ signInName }) => signInName === 'inspector')?.certificateNumber).toBe('DEMO-R-2204');
  });

  it('is overhauled, though its scope is called governor, and says who approved under which number', async () => {
    expect((await checklist()).word).toBe('overhauled');
    const { operation, input, options } = await approve();
    const released = await inspector.call(operation, input, options);
    expect(released.body).toMatchObject({ word: 'overhauled', stage: 'released' });
    first = released.body.releaseId;
    const newest = { where: { itemId: job.unitId }, orderBy: { recordedAt: 'desc' } } as const;
    expect(await job.reads.timeRecord.findFirst(newest)).toMatchObject({
      ...{ basis: 'overhaul', sinceNewTenths: 21_004, sinceOverhaulTenths: 0, sinceNewCycles: 500 },
    });
    await certificateOf('inspector', 'DEMO-R-9999');
    const { body } = await inspector.call(op.release, { releaseId: first });
    expect(body).toMatchObject({ version: 1, supersedes: null, supersededBy: null });
    expect(body.content.approvedBy).toMatchObject({ name: 'Bram Ostler', personCertificate: 'DEMO-R-2204' });
    expect((await pdf(first)).text).toContain('Bram Ostler, DEMO-R-2204');
  });

  it('is corrected only by whoever may release, with a reason, and only where something is different', async () => {
    const words = { remarks: 'For the Courser.' };
    await expectRefused({ shop, visitor: technician }, correction(first, words), {
      status: 403,
      type: 'not-permitted',
    });
    await certificateOf('tobit', null);
    await expectRefused({ shop, visitor: await as(shop, 'tobit') }, correction(first, words), {
      status: 403,
      type: 'not-authorised',
    });
    await expectRefused({ shop, visitor: inspector }, correction(first, { ...words, reason: '' }), {
      ...{ status: 422, type: 'invalid-input', pointer: '/reason' },
    });
    await expectRefused({ shop, visitor: inspector }, correction(first, { ...words, description: ' ' }), {
      ...{ status: 422, type: 'invalid-input', pointer: '/description' },
    });
    await expectRefused({ shop, visitor: inspector }, correction(first, { unit: { serial: 'VG1' } }), {
      ...{ status: 422, type: 'invalid-input', pointer: '/unit' },
    });
    await expectRefused({ shop, visitor: inspector }, correction(first, {}), {
      ...{ status: 422, type: 'nothing-corrected', pointer: '/description' },
    });
  });

  it('stays archived and marked when a newer version takes its place', async () => {
    const [before, old] = [await pdf(first), (await inspector.call(op.release, { releaseId: first })).body];
    const { operation, input } = correction(first, { remarks: 'For the Courser.' });
    const corrected = await inspector.call(operation, input);
    expect(corrected.body).toMatchObject({ number: `${old.number}-2`, version: 2, word: 'overhauled' });
    second = corrected.body.id;
    const { rows } = (await inspector.call(op.listReleases, { workOrderId: job.id })).body;
    expect(rows.map((row) => [row.number, row.version, row.supersededBy?.number ?? null])).toEqual([
      [`${old.number}-2`, 2, null],
      [old.number, 1, `${old.number}-2`],
    ]);
    expect(rows[0]?.supersedes).toEqual({ id: first, number: old.number, reason: 'the address was left out' });
    const now = (await inspector.call(op.release, { releaseId: second })).body.content;
    const { approvedBy, number: _, remarks, supersedes, ...same } = now;
    expect(old.content).toMatchObject(same);
    expect(remarks).toBe('For the Courser.');
    expect(supersedes).toEqual({ number: old.number, reason: 'the address was left out' });
    expect(approvedBy.personCertificate).toBe('DEMO-R-9999');
    expect((await pdf(first)).hash).toBe(before.hash);
    const after = await pdf(second);
    expect(after.hash).toBe(corrected.body.fileHash);
    expect(after.text).toContain(`Corrects and supersedes ${old.number}: the address was left out`);
    expect(await job.reads.timeRecord.count({ where: { itemId: job.unitId, basis: 'overhaul' } })).toBe(1);
    const signOffs = await job.reads.signOff.findMany({
      where: { workOrderId: job.id, subjectKind: 'release' },
      orderBy: { signedAt: 'asc' },
    });
    expect(signOffs.map(({ supersedesId }) => supersedesId)).toEqual([null, signOffs[0]?.id]);
  }, 30_000);

  it('is corrected from its newest version only', async () => {
    const again = { statement: 'Approved for return to service.' };
    await expectRefused({ shop, visitor: inspector }, correction(first, again), {
      status: 409,
      type: 'release-superseded',
    });
    const { operation, input } = correction(second, again);
    expect((await inspector.call(operation, input)).body).toMatchObject({
      number: expect.stringMatching(/^RS-\d+-3$/),
      version: 3,
    });
  });
});

/** Past the commands, as the owner of the tables. */
async function owner(shop: ShopApp, text: string): Promise<void> {
  const client = new pg.Client({ connectionString: shop.databaseUrl });
  await client.connect();
  await client.query(text);
  await client.end();
}
