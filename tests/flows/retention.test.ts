// size: one story told in order; each step stands on the one before
import { access } from 'node:fs/promises';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { fileOperations } from '@hubwright/contracts/files/operations';
import { addDays, addMonths } from '@hubwright/rules/dates';
import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import pg from 'pg';
import { listPurgeable, PurgeRefused, purgeOrder } from '../../apps/server/src/modules/records/purge-order.ts';
import { approveRelease } from '../../apps/server/src/modules/releases/approve-release.command.ts';
import { closeBuild } from '../../apps/server/src/modules/work-orders/close-build.command.ts';
import { asServer } from '../../apps/server/src/platform/database/server-role.ts';
import { exportRecords } from '../../apps/server/src/platform/records/export.ts';
import { KeyFolder } from '../../apps/server/src/platform/records/shop-key.ts';
import { verifyDatabase } from '../../apps/server/src/platform/records/verify-database.ts';
import { verifyFolder } from '../../apps/server/src/platform/records/verify-folder.ts';
import { readsOf, unknownTimes } from '../support/arrivals.ts';
import { Job } from '../support/job.ts';
import { as, pin } from '../support/people.ts';
import { jpeg, sendFile } from '../support/pictures.ts';
import { ShopApp } from '../support/shop-app.ts';

describe('records whose time has run', () => {
  let shop: ShopApp;
  let job: Job;
  let number: string;
  let approvedOn: string;
  let fileHash: string;
  let files: string;
  const sql = async (text: string, parameters: unknown[] = [], url = shop.databaseUrl) => {
    const client = new pg.Client({ connectionString: url });
    await client.connect();
    try {
      return (await client.query(text, parameters)).rows;
    } finally {
      await client.end();
    }
  };
  /** Someone asks on a day for the order's records to be destroyed. */
  const purgeOn = (today: string, by = 'admin') =>
    purgeOrder(
      { url: shop.databaseUrl, dataFolder: shop.dataFolder },
      { number, by, today, at: new Date(`${today}T12:00:00.000Z`) },
    );
  const kept = async () =>
    (
      await sql(
        `SELECT (SELECT count(*) FROM sign_offs WHERE work_order_id = $1)::int AS signatures,
           (SELECT count(*) FROM releases WHERE work_order_id = $1)::int AS releases,
           (SELECT count(*) FROM photos WHERE work_order_id = $1)::int AS photos,
           (SELECT count(*) FROM record_links WHERE subject_kind = 'work-order' AND subject_id = $1)::int AS entries`,
        [job.id],
      )
    )[0];

  beforeAll(async () => {
    shop = await ShopApp.open('shop');
    files = join(shop.dataFolder, 'files');
    const model = await readsOf(shop).unitModel.findFirstOrThrow({ where: { designation: 'VG14' } });
    const application = await readsOf(shop).application.findFirstOrThrow({ where: { modelId: model.id } });
    const ids = { modelId: model.id, applicationId: application.id };
    job = await Job.arrived(shop, 'VG7001', { ...ids, parts: [], scope: 'governor', times: unknownTimes });
    await job.inWork();
    await job.signed('repair');
    await job.takenOff();
    await job.signed('build');
    await job.filled();
    await shop.run(closeBuild, { workOrderId: job.id, signature: pin }, job.people.technician);
    await job.signed('final');
    const { version } = await job.workOrder();
    await shop.run(approveRelease(shop.running.files), { workOrderId: job.id, signature: pin }, job.people.inspector, {
      version,
    });
    const technician = await as(shop, 'technician');
    const { id: fileId } = (await sendFile(shop, technician, { bytes: await jpeg(), type: 'image/jpeg' })).body;
    const shown = { workOrderId: job.id, fileId: String(fileId), title: 'The unit as it arrived' };
    expect((await technician.call(fileOperations.addConditionPhoto, shown)).status).toBe(200);
    number = job.number;
    const [release] = await sql(
      `SELECT file_hash AS hash, (released_at AT TIME ZONE (SELECT zone FROM shop_profile))::date::text AS day FROM releases WHERE work_order_id = $1`,
      [job.id],
    );
    approvedOn = release.day;
    fileHash = release.hash;
  }, 180_000);
  afterAll(() => shop.close());

  it('are kept while the order is open, whatever the day', async () => {
    await expect(purgeOn('2090-01-01')).rejects.toThrow('is not a closed work order');
    await sql('UPDATE work_orders SET closed_at = now() WHERE id = $1', [job.id]);
  });

  it('are kept to the last day of the longest rule, also against an administrator', async () => {
    await sql(
      `UPDATE shop_profile SET retention_rules = '[{"approval":"one authority","years":2},{"approval":"another","years":3}]'`,
    );
    const before = await kept();
    const lastDay = addMonths(approvedOn, 36);
    await expect(purgeOn(lastDay)).rejects.toThrow(`are kept until ${addDays(lastDay, 1)}`);
    await expect(purgeOn(addDays(lastDay, 1), 'inspector')).rejects.toThrow('is not an administrator');
    expect(await kept()).toEqual(before);
    expect(before).toMatchObject({ releases: 1, photos: 1 });
    expect(await listPurgeable(shop.databaseUrl, lastDay)).toEqual([]);
  });

  it('cannot be destroyed by the running server, nor by the owner without the role', async () => {
    for (const url of [asServer(shop.databaseUrl), shop.databaseUrl])
      await expect(sql('DELETE FROM sign_offs WHERE work_order_id = $1', [job.id], url)).rejects.toThrow(
        /permission denied|only added/i,
      );
    const [role] = await sql(`SELECT pg_has_role('hubwright_server', 'hubwright_retention', 'MEMBER') AS member`);
    expect(role).toEqual({ member: false });
  });

  it('are not destroyed while the records do not hold', async () => {
    const today = addDays(addMonths(approvedOn, 36), 1);
    const spoil = (by: number) =>
      sql(
        `SET session_replication_role = replica; UPDATE sign_offs SET result = result || '${by > 0 ? '?' : ''}' WHERE work_order_id = '${job.id}'`,
      );
    await purgeOn('2026-01-01').catch(() => undefined); // leaves an anchor over what was signed
    await spoil(1);
    await expect(purgeOn(today)).rejects.toThrow(PurgeRefused);
    await sql(`SET session_replication_role = replica; UPDATE sign_offs SET result = rtrim(result, '?')`);
    expect((await verifyDatabase(shop.databaseUrl, files)).faults).toEqual([]);
  });

  it('go the day after, and leave a signed proof that every check accepts', async () => {
    const today = addDays(addMonths(approvedOn, 36), 1);
    const [photo] = await sql('SELECT file_hash AS picture, thumbnail_file_hash AS thumbnail FROM photos');
    await expect(purgeOn(today)).rejects.toThrow('was sent again within the last day');
    await sql('DELETE FROM staged_files'); // as the sweep does a day after something was sent
    const destroyed = [fileHash, photo.picture, photo.thumbnail].sort();
    expect(await listPurgeable(shop.databaseUrl, today)).toEqual([
      { kind: 'work order', id: job.id, number, approvedOn, from: today },
    ]);
    const proof = await purgeOn(today);
    expect(proof).toMatchObject({ by: 'admin', what: `work order ${number}`, files: destroyed });
    expect(proof.policy).toContain('another 3 years');
    expect(await kept()).toEqual({ signatures: 0, releases: 0, photos: 0, entries: 0 });
    for (const hash of destroyed) await expect(access(join(files, hash.slice(0, 2), hash))).rejects.toThrow();
    const report = await verifyDatabase(shop.databaseUrl, files);
    expect(report.faults).toEqual([]);
    expect(await listPurgeable(shop.databaseUrl, today)).toEqual([]);
  });

  it('are proven destroyed in an export too', async () => {
    const folder = join(shop.dataFolder, 'export');
    const keys = new KeyFolder(join(shop.dataFolder, 'keys'));
    const verifier = fileURLToPath(import.meta.url); // any file: it is not run here
    await exportRecords(folder, { url: shop.databaseUrl, filesFolder: files, keys, at: new Date(), verifier });
    expect((await verifyFolder(folder)).faults).toEqual([]);
  });

  it('destroyed without a proof, or with a changed one, are missed', async () => {
    const tamper = 'SET session_replication_role = replica;';
    await sql(`${tamper} CREATE TABLE kept_proofs AS SELECT * FROM purges; DELETE FROM purges`);
    const missed = (await verifyDatabase(shop.databaseUrl, files)).faults;
    expect(missed.map(({ place }) => place)).toContainEqual(expect.stringMatching(`^work-order ${job.id}, entry `));
    await sql(
      `${tamper} INSERT INTO purges SELECT * FROM kept_proofs; UPDATE purges SET body = replace(body, 'admin', 'other')`,
    );
    const changed = (await verifyDatabase(shop.databaseUrl, files)).faults;
    expect(changed.map(({ reason }) => reason)).toContain('the proof was changed, or not signed by the shop');
  });
});
