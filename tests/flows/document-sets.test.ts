// size: one story told in order; each step stands on the one before
import { documentOperations as documents } from '@hubwright/contracts/manuals/document-operations';
import { releaseOperations } from '@hubwright/contracts/releases/operations';
import { documentSetOperations as op } from '@hubwright/contracts/work-orders/document-set-operations';
import { travelerOperations } from '@hubwright/contracts/work-orders/traveler-operations';
import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import { closeBuild } from '../../apps/server/src/modules/work-orders/close-build.command.ts';
import { signStep } from '../../apps/server/src/modules/work-orders/sign-step.command.ts';
import { readsOf } from '../support/arrivals.ts';
import { day } from '../support/days.ts';
import { Job } from '../support/job.ts';
import { as, pin } from '../support/people.ts';
import { expectRefused } from '../support/refused.ts';
import { ShopApp, type Visitor } from '../support/shop-app.ts';

describe('the documents work goes by', () => {
  let shop: ShopApp;
  let inspector: Visitor;
  let other: Visitor;
  let technician: Visitor;
  let governor: string;
  let propeller: string;
  let job: Job;
  let letter: { id: string; issueId: string };

  beforeAll(async () => {
    shop = await ShopApp.open('shop');
    [inspector, other] = [await as(shop, 'inspector'), await as(shop, 'sunniva')];
    technician = await as(shop, 'technician');
    const models = await readsOf(shop).unitModel.findMany();
    const idOf = (designation: string) => models.find((model) => model.designation === designation)?.id ?? '';
    [governor, propeller] = [idOf('VG14'), idOf('Q3C-76')];
  });
  afterAll(() => shop.close());

  const given = (changes: Record<string, unknown> = {}) => ({
    kind: 'service-letter' as const,
    number: 'VSL-31',
    title: 'Spring seats of VG14 governors',
    issuer: 'Vexley',
    modelIds: [governor],
    issue: 'first',
    issuedOn: '2025-03-01',
    summary: 'Look at the spring seat under light.',
    ...changes,
  });
  const add = async (changes: Record<string, unknown> = {}) => {
    const answer = await inspector.call(documents.addDocument, given(changes) as never);
    expect(answer.status).toBe(200);
    return answer.body as { id: string; issueId: string };
  };
  const issue = async (documentId: string, of: { issue: string; issuedOn: string; summary: string }) => {
    const { version } = await readsOf(shop).document.findUniqueOrThrow({ where: { id: documentId } });
    const answer = await inspector.call(documents.issueDocument, { documentId, ...of }, { version });
    expect(answer.status).toBe(200);
    return answer.body as { issueId: string };
  };
  const setOf = async (workOrderId: string) => (await other.call(op.workOrderDocuments, { workOrderId })).body;
  const takeOver = async (options: { dryRun?: boolean } = {}) => {
    const { version } = await job.workOrder();
    return inspector.call(op.takeOverDocuments, { workOrderId: job.id, signature: pin }, { version, ...options });
  };

  it('are those of its model when it is received; who found each current, and when, stands beside it', async () => {
    letter = await add();
    await add({ kind: 'standard-practices', number: 'VSP-1', title: 'Standard practices', issue: '7' });
    await add({ number: 'QSL-9', title: 'Clamps', issuer: 'Quillon', modelIds: [propeller] });
    const checked = { issueId: letter.issueId, checkedOn: day(-2), signature: pin };
    expect((await inspector.call(documents.checkDocument, checked)).status).toBe(200);
    const reads = readsOf(shop);
    const application = await reads.application.findFirstOrThrow({
      where: { modelId: governor, airframe: 'Heronby Courser 4' },
    });
    job = await Job.arrived(shop, 'VG6901', { modelId: governor, applicationId: application.id, parts: [] });
    const { set, differences, manual } = await setOf(job.id);
    expect(differences).toEqual([]);
    expect(manual).toMatchObject({ number: 'VOM-14' });
    expect(set).toEqual([
      expect.objectContaining({
        number: 'VSL-31',
        issue: 'first',
        currencyCheckedBy: 'Bram Ostler',
        currencyCheckedOn: day(-2),
      }),
      expect.objectContaining({ number: 'VSP-1', issue: '7', currencyCheckedBy: null }),
    ]);
    await job.inWork();
  }, 60_000);

  it('hold the work when one has a newer issue, until an inspector has read what every issue since then changed', async () => {
    await issue(letter.id, { issue: 'A', issuedOn: '2025-09-01', summary: 'Replace seats below 0.070 in.' });
    await issue(letter.id, { issue: 'B', issuedOn: '2026-02-01', summary: 'Seats below 0.072 in.' });
    const [step] = await job.nextSteps();
    if (!step) throw new Error('Nothing is open');
    const refused = shop.run(signStep, await job.entryFor(step), job.signerOf(step));
    await expect(refused).rejects.toMatchObject({
      type: 'documents-changed',
      detail: expect.stringContaining('VSL-31'),
    });
    const traveler = await technician.call(travelerOperations.traveler, { travelerId: step.travelerId });
    const blocked = traveler.body.steps.find(({ id }) => id === step.id)?.blocked;
    expect(blocked).toMatchObject({ problem: 'documents-changed' });
    const { differences } = await setOf(job.id);
    expect(differences).toEqual([
      {
        ...{ change: 'changed', kind: 'service-letter', number: 'VSL-31', title: 'Spring seats of VG14 governors' },
        before: 'first of 2025-03-01',
        after: 'B of 2026-02-01',
        says: ['A: Replace seats below 0.070 in.', 'B: Seats below 0.072 in.'],
      },
    ]);
    const tried = await takeOver({ dryRun: true });
    const done = await takeOver();
    expect([done.status, done.body]).toEqual([200, tried.body]);
    expect(done.body.differences).toEqual(differences);
    const signOff = await readsOf(shop).signOff.findFirstOrThrow({ where: { subjectKind: 'document-change' } });
    expect(JSON.parse(signOff.content)).toMatchObject({ differences });
    await job.sign(step);
    expect((await setOf(job.id)).differences).toEqual([]);
  }, 60_000);

  it('hold the end of the build and the release as well, whether one is new, is withdrawn or belongs to the model no more', async () => {
    await job.signed('repair');
    await job.takenOff();
    await job.signed('build');
    await job.filled();
    const directive = await add({
      kind: 'directive',
      number: 'AD-2026-04',
      title: 'Drive gear',
      issuer: 'the authority',
    });
    const close = () => shop.run(closeBuild, { workOrderId: job.id, signature: pin }, job.people.technician);
    await expect(close()).rejects.toMatchObject({ type: 'documents-changed' });
    expect((await takeOver()).body.differences).toMatchObject([
      { change: 'added', before: null, number: 'AD-2026-04' },
    ]);
    await close();
    await job.signed('final');

    const { version } = await readsOf(shop).document.findUniqueOrThrow({ where: { id: directive.id } });
    const withdrawn = { documentId: directive.id, reason: 'cancelled by its successor' };
    expect((await inspector.call(documents.withdrawDocument, withdrawn, { version })).status).toBe(200);
    const letterNow = await readsOf(shop).document.findUniqueOrThrow({ where: { id: letter.id } });
    const moved = { documentId: letter.id, modelIds: [propeller] };
    await inspector.call(documents.setDocumentModels, moved, { version: letterNow.version });
    const checklist = await other.call(releaseOperations.releaseChecklist, { workOrderId: job.id });
    expect(checklist.body.open.map(({ what }) => what)).toEqual([
      'The work does not go by the current issue of AD-2026-04',
      'The work does not go by the current issue of VSL-31',
    ]);
    expect((await takeOver()).body.differences.map(({ change, number }) => [change, number])).toEqual([
      ['removed', 'AD-2026-04'],
      ['removed', 'VSL-31'],
    ]);
    const back = await readsOf(shop).document.findUniqueOrThrow({ where: { id: letter.id } });
    await inspector.call(
      documents.setDocumentModels,
      { documentId: letter.id, modelIds: [governor] },
      { version: back.version },
    );
    expect((await takeOver()).status).toBe(200);
  }, 60_000);

  it('stand in the record of the work, each by its issue', async () => {
    const workOrder = await job.workOrder();
    const input = { workOrderId: job.id, signature: pin };
    const approved = await other.call(releaseOperations.approveRelease, input, { version: workOrder.version });
    expect(approved.status).toBe(200);
    const release = await readsOf(shop).release.findFirstOrThrow({ where: { workOrderId: job.id } });
    const { dataReferences } = JSON.parse(JSON.stringify(release.content)) as { dataReferences: string[] };
    expect(dataReferences).toEqual([
      expect.stringMatching(/^VOM-14 revision \S+, .* \(found current \d{4}-\d\d-\d\d by .+\)$/),
      'VSL-31 B, Spring seats of VG14 governors',
      'VSP-1 7, Standard practices',
    ]);
    await expectRefused(
      { shop, visitor: inspector },
      {
        operation: op.takeOverDocuments,
        input,
        options: { version: (await job.workOrder()).version },
      },
      { status: 409, type: 'wrong-state' },
    );
  });

  it('are refused, with the reason and nothing changed, where they cannot be', async () => {
    const refuse = (
      input: Record<string, unknown>,
      refusal: { status: number; type: string; pointer?: string },
      visitor = inspector,
    ) => expectRefused({ shop, visitor }, { operation: documents.addDocument, input }, refusal);
    await refuse(given({ number: 'VSL-40' }), { status: 403, type: 'not-permitted' }, technician);
    await refuse(given(), { status: 409, type: 'already-exists' });
    await refuse(given({ number: 'VSL-41', issuedOn: day(1) }), {
      status: 422,
      type: 'date-ahead',
      pointer: '/issuedOn',
    });
    await refuse(given({ number: 'VSL-42', modelIds: [] }), {
      status: 422,
      type: 'invalid-input',
      pointer: '/modelIds',
    });
    await refuse(given({ number: 'VSL-43', modelIds: [job.id] }), { status: 404, type: 'not-found' });
    await refuse(given({ number: 'VSL-44', summary: ' ' }), {
      status: 422,
      type: 'invalid-input',
      pointer: '/summary',
    });
    const { version } = await readsOf(shop).document.findUniqueOrThrow({ where: { id: letter.id } });
    const older = { documentId: letter.id, issue: 'Z', issuedOn: '2024-01-01', summary: 'Older' };
    await expectRefused(
      { shop, visitor: inspector },
      { operation: documents.issueDocument, input: older, options: { version } },
      { status: 422, type: 'issue-older', pointer: '/issuedOn' },
    );
    await expectRefused(
      { shop, visitor: inspector },
      {
        operation: documents.checkDocument,
        input: { issueId: letter.issueId, checkedOn: day(0), signature: pin },
      },
      { status: 409, type: 'issue-superseded' },
    );
  });
});
