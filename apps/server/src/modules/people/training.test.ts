import { accessOperations } from '@hubwright/contracts/people/access-operations';
import { peopleOperations } from '@hubwright/contracts/people/operations';
import { trainingOperations } from '@hubwright/contracts/people/training-operations';
import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import { newPerson } from '../../../../../tests/support/builders.ts';
import { day } from '../../../../../tests/support/days.ts';
import { actorOf, as } from '../../../../../tests/support/people.ts';
import { expectRefused } from '../../../../../tests/support/refused.ts';
import { ShopApp, type Visitor } from '../../../../../tests/support/shop-app.ts';

const { addTrainingItem, changeTrainingItem, logTraining, correctTraining, trainingLog, trainingDue } =
  trainingOperations;

describe('training', () => {
  let shop: ShopApp;
  let administrator: Visitor;
  let personId: string;
  let itemId: string;
  beforeAll(async () => {
    shop = await ShopApp.open('shop');
    administrator = await as(shop, 'administrator');
    const person = { signInName: 'isolde', displayName: 'Isolde Reedham', initials: 'IR' };
    personId = (await newPerson(shop, { ...person, roles: ['technician'] })).personId;
  }, 120_000);
  afterAll(() => shop.close());

  const grant = (level: 'perform' | 'trainee') => ({
    operation: peopleOperations.grantAuthorisation,
    input: { personId, process: 'governor-bench' as const, level, validFrom: day(0) },
  });
  const taken = (more: object = {}) => ({
    ...{ personId, itemId, kind: 'initial' as const, givenBy: 'Bench school', heldOn: day(-30), minutes: 90 },
    ...{ result: 'passed' as const, ...more },
  });
  const refuse = (sent: Parameters<typeof expectRefused>[1], status: number, type: string) =>
    expectRefused({ shop, visitor: administrator }, sent, { status, type });
  const log = async () => (await administrator.call(trainingLog, { personId })).body;

  it('is named once, with the processes that need it', async () => {
    const item = { title: 'Governor bench course', everyMonths: 12, processes: ['governor-bench' as const] };
    const added = await administrator.call(addTrainingItem, item);
    expect(added.status).toBe(200);
    itemId = added.body.id;
    await refuse({ operation: addTrainingItem, input: item }, 409, 'training-named');
    await refuse(
      { operation: addTrainingItem, input: { ...item, title: 'Other', everyMonths: 0 } },
      422,
      'invalid-input',
    );
  });

  it('that is missing keeps an authorisation from being granted, but not one as a trainee', async () => {
    await refuse(grant('perform'), 409, 'training-missing');
    const { operation, input } = grant('trainee');
    expect((await administrator.call(operation, input)).status).toBe(200);
    const tech = (await administrator.call(peopleOperations.listPeople, {})).body.rows.find(
      ({ id }) => id === personId,
    );
    expect(tech?.authorisations).toMatchObject([{ process: 'governor-bench', level: 'trainee' }]);
  });

  it('is refused when it lies ahead, has no name, or would be due before it was held', async () => {
    const entry = (more: object) => ({ operation: logTraining, input: taken(more) });
    await refuse(entry({ heldOn: day(1) }), 422, 'training-in-future');
    await refuse(entry({ dueOn: day(-31) }), 422, 'training-due-wrong');
    await refuse(entry({ itemId: undefined }), 422, 'training-unnamed');
    await refuse(entry({ minutes: 0 }), 422, 'invalid-input');
    await refuse(entry({ fileId: personId }), 409, 'upload-gone');
  });

  it('that was failed does not count; passed it does, until the day the months give', async () => {
    await administrator.call(logTraining, taken({ result: 'failed', heldOn: day(-40) }));
    await refuse(grant('perform'), 409, 'training-missing');
    const passed = await administrator.call(logTraining, taken());
    expect(passed.body.dueOn).toBe(`${Number(day(-30).slice(0, 4)) + 1}${day(-30).slice(4)}`.replace('02-29', '02-28'));
    const { operation, input } = grant('perform');
    expect((await administrator.call(operation, input)).status).toBe(200);
    expect((await log()).notCurrent).toEqual([]);
  });

  it('corrected stays in the log beside the right line; run out it makes the authorisation not current, said as such', async () => {
    const [wrong] = (await log()).rows;
    const { personId: _, ...right } = taken({ heldOn: day(-500), dueOn: day(-1) });
    const correction = { trainingId: wrong?.id ?? '', ...right, reason: 'dated by the wrong paper' };
    expect((await administrator.call(correctTraining, correction)).status).toBe(200);
    await refuse({ operation: correctTraining, input: correction }, 409, 'already-corrected');
    const { rows, notCurrent } = await log();
    expect(rows).toHaveLength(3);
    expect(rows.find(({ id }) => id === wrong?.id)?.supersededById).not.toBeNull();
    // The failed one is newer than the passed one now: nothing counts.
    expect(notCurrent).toMatchObject([{ process: 'governor-bench', level: 'perform', missing: [{ itemId }] }]);
    const due = await administrator.call(trainingDue, { withinDays: 30 });
    expect(due.body.rows).toContainEqual(expect.objectContaining({ personId, itemId, processes: ['governor-bench'] }));
  });

  it('asked for no more, keeps nobody from anything', async () => {
    const item = { itemId, title: 'Governor bench course', everyMonths: null, processes: [], active: false };
    const change = { ...item, reason: 'part of the apprenticeship now' };
    await refuse({ operation: changeTrainingItem, input: change, options: { version: 7 } }, 412, 'out-of-date');
    expect((await administrator.call(changeTrainingItem, change, { version: 1 })).status).toBe(200);
    expect((await log()).notCurrent).toEqual([]);
  });

  it('is seen by those who lead or inspect, and logged by those who lead', async () => {
    const technician = await as(shop, 'technician');
    expect((await technician.call(trainingLog, { personId })).status).toBe(403);
    const inspector = await as(shop, 'inspector');
    expect((await inspector.call(trainingLog, { personId })).status).toBe(200);
    expect((await inspector.call(logTraining, taken())).status).toBe(403);
  });

  it('names only inspectors who are authorised', async () => {
    const list = { process: 'governor-bench' as const, personIds: [personId], reason: 'try' };
    await refuse({ operation: trainingOperations.setInspectionList, input: list }, 409, 'not-an-inspector');
    const { personId: sunniva } = await actorOf(shop, 'sunniva');
    const right = { ...list, personIds: [sunniva] };
    expect((await administrator.call(trainingOperations.setInspectionList, right)).body.version).toBe(1);
    const { body } = await administrator.call(trainingOperations.inspectionLists, {});
    expect(body.rows).toMatchObject([{ process: 'governor-bench', people: [{ id: sunniva }] }]);
  });

  it('of someone who has left is logged no more', async () => {
    const { rows } = (await administrator.call(peopleOperations.listPeople, {})).body;
    const version = rows.find(({ id }) => id === personId)?.version ?? 0;
    await administrator.call(accessOperations.endPerson, { personId, reason: 'moved away' }, { version });
    await refuse({ operation: logTraining, input: taken() }, 409, 'has-left');
    await refuse(grant('trainee'), 409, 'has-left');
  });
});
