import { join } from 'node:path';
import { recordOperations as op } from '@hubwright/contracts/records/operations';
import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import { demoPassword } from '../../../../../seed/data/people.ts';
import { Job } from '../../../../../tests/support/job.ts';
import { actorOf, as } from '../../../../../tests/support/people.ts';
import { expectRefused } from '../../../../../tests/support/refused.ts';
import { ShopApp, type Visitor } from '../../../../../tests/support/shop-app.ts';
import { Reads } from '../../platform/database/reads.ts';
import { KeyFolder } from '../../platform/records/shop-key.ts';
import { takeAnchor } from '../../platform/records/take-anchor.ts';
import { verifyDatabase } from '../../platform/records/verify-database.ts';
import { addPerson } from '../people/add-person.command.ts';
import { changePerson } from '../people/change-person.command.ts';

/** The administrator of the invented shop has no PIN. */
const signature = { password: demoPassword };

describe('the keeping of records', () => {
  let shop: ShopApp;
  let administrator: Visitor;
  const keeping = async () => (await administrator.call(op.recordKeeping, {})).body;
  const rotate = { operation: op.rotateShopKey, input: { reason: 'a laptop was lost', signature } };

  beforeAll(async () => {
    shop = await ShopApp.open('shop');
    administrator = await as(shop, 'administrator');
  });
  afterAll(() => shop.close());

  it('says when there is no backup and no anchor yet', async () => {
    expect(await keeping()).toMatchObject({
      newestBackup: null,
      backupEveryHours: null,
      anchor: null,
      keys: [],
      purges: [],
    });
    await expectRefused(
      { shop, visitor: administrator },
      { operation: op.takeBackup, input: {} },
      { status: 409, type: 'no-backup-place' },
    );
    await expectRefused({ shop, visitor: administrator }, rotate, { status: 409, type: 'shop-key-missing' });
  });

  it('replaces the shop key by one that the old one signed', async () => {
    await takeAnchor(shop.databaseUrl, new KeyFolder(join(shop.dataFolder, 'keys')), new Date());
    const [first] = (await keeping()).keys;
    const { status, body } = await administrator.call(rotate.operation, rotate.input);
    expect(status).toBe(200);
    expect((await keeping()).keys).toMatchObject([
      { id: body.id, signedByTheOneBefore: true },
      { id: first?.id, signedByTheOneBefore: false },
    ]);
    const anchor = await takeAnchor(shop.databaseUrl, new KeyFolder(join(shop.dataFolder, 'keys')), new Date());
    expect(anchor?.keyId).toBe(body.id);
    expect(await verifyDatabase(shop.databaseUrl)).toMatchObject({ faults: [], notices: [] });
  });

  it('never keeps records shorter than two years', async () => {
    const rules = [{ approval: 'one authority', years: 3 }];
    const { version } = await keeping();
    const short = { rules: [{ approval: 'one authority', years: 1 }], reason: 'shorter', signature };
    await expectRefused(
      { shop, visitor: administrator },
      { operation: op.setRetention, input: short, options: { version } },
      { status: 422, type: 'invalid-input', pointer: '/rules/0/years' },
    );
    const answer = await administrator.call(
      op.setRetention,
      { rules, reason: 'a second approval', signature },
      { version },
    );
    expect(answer.status).toBe(200);
    expect((await keeping()).retentionRules).toEqual(rules);
  });

  it('erases a person who left, and no chain breaks', async () => {
    const actor = await actorOf(shop, 'administrator');
    const reads = shop.running.app.get(Reads).models;
    const given = { displayName: 'Wilmot Sedgewick', initials: 'WS', email: 'wilmot@example.com' };
    const { id, version } = await shop.run(
      addPerson,
      { ...given, signInName: 'wilmot', roles: ['technician'], password: 'a long enough passphrase' },
      actor,
    );
    const erase = { operation: op.erasePerson, input: { personId: id, reason: 'asked to be', signature } };
    await expectRefused({ shop, visitor: administrator }, erase, { status: 409, type: 'still-needed' });
    const off = { personId: id, displayName: given.displayName, roles: ['technician' as const], active: false };
    await shop.run(changePerson, off, actor, { version });
    const inChains = async () => {
      const bodies = await reads.recordEntry.findMany({ select: { body: true } });
      return bodies.filter(({ body }) => /Wilmot|wilmot|Sedgewick/.test(body)).length;
    };
    expect(await inChains()).toBe(0);
    expect(await reads.personalValue.count({ where: { subjectId: id } })).toBeGreaterThan(4);
    expect((await administrator.call(erase.operation, erase.input)).status).toBe(200);
    expect(await reads.personalValue.count({ where: { subjectId: id } })).toBe(0);
    expect(await reads.person.findUnique({ where: { id } })).toMatchObject({
      displayName: 'Erased person',
      email: null,
    });
    expect((await verifyDatabase(shop.databaseUrl)).faults).toEqual([]);
  });

  it('keeps the name of a person whose signatures must be kept', async () => {
    await Job.arrived(shop, 'TH9001');
    const { personId } = await actorOf(shop, 'inspector');
    const reads = shop.running.app.get(Reads).models;
    const { version, displayName } = await reads.person.findUniqueOrThrow({ where: { id: personId } });
    const off = { personId, displayName, roles: ['inspector' as const], active: false };
    await shop.run(changePerson, off, await actorOf(shop, 'administrator'), { version });
    const erase = { operation: op.erasePerson, input: { personId, reason: 'left', signature } };
    await expectRefused({ shop, visitor: administrator }, erase, { status: 409, type: 'still-needed' });
    expect(await reads.person.findUnique({ where: { id: personId } })).toMatchObject({ displayName });
  });
});
