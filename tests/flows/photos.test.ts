import { randomUUID } from 'node:crypto';
import { rm, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { fileOperations } from '@hubwright/contracts/files/operations';
import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import pg from 'pg';
import sharp from 'sharp';
import { raiseFinding } from '../../apps/server/src/modules/findings/raise-finding.command.ts';
import { KeyFolder } from '../../apps/server/src/platform/records/shop-key.ts';
import { takeAnchor } from '../../apps/server/src/platform/records/take-anchor.ts';
import { verifyDatabase } from '../../apps/server/src/platform/records/verify-database.ts';
import { Job } from '../support/job.ts';
import { as } from '../support/people.ts';
import { jpeg, pdf, sendFile } from '../support/pictures.ts';
import { ShopApp, type Visitor } from '../support/shop-app.ts';

const { addPhoto, addConditionPhoto, addStepPhoto, addTravelerPhoto, listPhotos, strikePhoto } = fileOperations;
const title = 'Nick in the leading edge at station 30, beside a ruler';

describe('photos', () => {
  let shop: ShopApp;
  let job: Job;
  let technician: Visitor;
  let inspector: Visitor;
  let findingId: string;
  let photoId: string;
  beforeAll(async () => {
    shop = await ShopApp.open();
    job = await Job.arrived(shop, '4711');
    await job.tornDown();
    const step = await job.nextAt('blade 1');
    const found = { area: 'leading-edge', damage: 'nicked' as const, place: 'station 30', description: 'a nick' };
    const raised = await shop.run(raiseFinding, { travelerId: step.travelerId, ...found }, job.people.technician);
    findingId = raised.id;
    technician = await as(shop, 'technician');
    inspector = await as(shop, 'inspector');
  }, 120_000);
  afterAll(() => shop.close());

  async function sent(bytes?: Buffer, visitor = technician): Promise<string> {
    const answer = await sendFile(shop, visitor, { bytes: bytes ?? (await jpeg()), type: 'application/octet-stream' });
    expect(answer.status).toBe(200);
    return String(answer.body.id);
  }
  const fetched = (path: string, headers: Record<string, string> = {}, visitor = inspector) =>
    fetch(shop.address + path, { headers: { cookie: visitor.cookie, ...headers } });
  const ofFinding = async () =>
    (await inspector.call(listPhotos, { subjectKind: 'finding', subjectId: findingId })).body.rows;

  it('a technician puts a photo beside a finding: who, when and what it shows are in its chain', async () => {
    const fileId = await sent();
    const key = randomUUID();
    const takenAt = new Date(Date.now() - 60_000).toISOString();
    const input = { findingId, fileId, title: `  ${title} `, takenAt };
    const answer = await technician.call(addPhoto, input, { key });
    expect(answer.status).toBe(200);
    expect((await technician.call(addPhoto, input, { key })).body).toEqual(answer.body);
    photoId = answer.body.id;
    const rows = await ofFinding();
    expect(rows).toEqual([
      expect.objectContaining({
        id: photoId,
        title,
        takenAt,
        mediaType: 'image/jpeg',
        width: 800,
        height: 600,
        struck: null,
      }),
    ]);
    expect(rows[0]?.addedBy.id).toBe(job.people.technician.personId);
    const sql = new pg.Client({ connectionString: shop.databaseUrl });
    await sql.connect();
    const { rows: entries } = await sql.query(
      `SELECT l.subject_kind AS kind, e.body::jsonb AS body FROM record_links l JOIN record_entries e ON e.id = l.entry_id WHERE e.command = 'add-photo' ORDER BY 1`,
    );
    await sql.end();
    expect(entries.map(({ kind }) => kind)).toEqual(['finding', 'photo', 'work-order']);
    expect(entries[0].body).toMatchObject({
      who: { person: job.people.technician.personId },
      facts: { fileHash: answer.body.fileHash, title, takenAt, mediaType: 'image/jpeg' },
    });
  });

  it('is shown to who may see the finding, as what it is and nothing that runs; unchanged copies are not sent again', async () => {
    const whole = await fetched(`/api/photos/${photoId}/file`);
    expect(Object.fromEntries(whole.headers)).toMatchObject({
      'content-type': 'image/jpeg',
      'content-disposition': `inline; filename="photo-${photoId}.jpg"`,
      'x-content-type-options': 'nosniff',
      'content-security-policy': expect.stringContaining('sandbox'),
      'cache-control': 'private, no-cache',
    });
    const bytes = Buffer.from(await whole.arrayBuffer());
    expect(bytes.length).toBe(Number(whole.headers.get('content-length')));
    expect(await sharp(bytes).metadata()).toMatchObject({ format: 'jpeg', width: 800 });
    const small = Buffer.from(await (await fetched(`/api/photos/${photoId}/thumbnail`)).arrayBuffer());
    expect(await sharp(small).metadata()).toMatchObject({ width: 320, height: 240 });
    const again = await fetched(`/api/photos/${photoId}/file`, { 'if-none-match': whole.headers.get('etag') ?? '' });
    expect([again.status, await again.text()]).toEqual([304, '']);
    const stranger = await fetched(`/api/photos/${photoId}/file`, {}, shop.visitor());
    expect([stranger.status, stranger.headers.get('etag')]).toEqual([401, null]);
    for (const path of [
      `/api/photos/${randomUUID()}/file`,
      '/api/photos/..%2f..%2fetc/file',
      `/api/photos/${findingId}/file`,
    ])
      expect((await fetched(path)).status).toBeGreaterThanOrEqual(404);
  });

  it('a document is only ever saved', async () => {
    const fileId = await sent(pdf());
    const added = await technician.call(addPhoto, { findingId, fileId, title: 'Report of the eddy-current test' });
    const answer = await fetched(`/api/photos/${added.body.id}/file`);
    expect(answer.headers.get('content-disposition')).toBe(`attachment; filename="photo-${added.body.id}.pdf"`);
    expect(answer.headers.get('content-type')).toBe('application/pdf');
    expect((await fetched(`/api/photos/${added.body.id}/thumbnail`)).status).toBe(404);
  });

  it.each([
    ['a path', '../../etc/passwd', 200],
    ['markup', '<img src=x onerror=alert(1)>', 200],
    ['a line break', 'Nick\r\nset-cookie: a=b', 422],
    ['an end of text', 'Nick\u0000.jpg', 422],
    ['writing turned round', 'Nick \u202egpj.exe', 422],
    ['nothing', '  ', 422],
    ['a book', 'x'.repeat(201), 422],
  ])('what it shows is text and nothing else: %s', async (_, shows, status) => {
    const answer = await technician.call(addPhoto, { findingId, fileId: await sent(), title: shows });
    expect(answer.status).toBe(status);
    if (status !== 200) return;
    const row = (await ofFinding()).find(({ id }) => id === answer.body.id);
    expect(row?.title).toBe(shows);
    const file = await fetched(`/api/photos/${answer.body.id}/file`);
    expect(file.headers.get('content-disposition')).toBe(`inline; filename="photo-${answer.body.id}.jpg"`);
  });

  it('only who sent a file may name it, only while it waits, and not as taken tomorrow', async () => {
    const fileId = await sent();
    const photo = { findingId, fileId, title };
    expect((await inspector.call(addPhoto, photo)).body.type).toBe('/problems/upload-gone');
    expect((await technician.call(addPhoto, { ...photo, fileId: randomUUID() })).body.type).toBe(
      '/problems/upload-gone',
    );
    const takenAt = new Date(Date.now() + 86_400_000).toISOString();
    expect((await technician.call(addPhoto, { ...photo, takenAt })).status).toBe(422);
    expect((await technician.call(addPhoto, { ...photo, findingId: randomUUID() })).status).toBe(404);
    const desk = await as(shop, 'front-desk');
    expect((await desk.call(addPhoto, photo)).status).toBe(403);
    const lost = await sendFile(shop, technician, { bytes: await jpeg(333, 222) });
    const hash = String(lost.body.hash);
    await rm(join(shop.dataFolder, 'files', hash.slice(0, 2), hash));
    const answer = await technician.call(addPhoto, { findingId, fileId: String(lost.body.id), title });
    expect(answer.body.type).toBe('/problems/upload-gone');
  });

  it('also stands with a traveler, a step and the condition a unit arrived in', async () => {
    const step = await job.nextAt('blade 2');
    const desk = await as(shop, 'front-desk');
    const condition = { workOrderId: job.id, fileId: await sent(undefined, desk), title: 'Crate, one corner crushed' };
    expect((await desk.call(addConditionPhoto, condition)).status).toBe(200);
    const traveler = { travelerId: step.travelerId, fileId: await sent(), title };
    expect((await technician.call(addTravelerPhoto, traveler)).status).toBe(200);
    expect((await technician.call(addStepPhoto, { stepId: step.id, fileId: await sent(), title })).status).toBe(200);
    for (const [subjectKind, subjectId] of [
      ['work-order', job.id],
      ['traveler', step.travelerId],
      ['traveler-step', step.id],
    ] as const)
      expect((await desk.call(listPhotos, { subjectKind, subjectId })).body.rows).toHaveLength(1);
  });

  it('is struck with a reason by who added it or an inspector, once; the picture stays', async () => {
    const own = await technician.call(addPhoto, { findingId, fileId: await sent(), title: 'The wrong blade' });
    const desk = await as(shop, 'front-desk');
    expect((await desk.call(strikePhoto, { photoId: own.body.id, reason: 'tidying' })).status).toBe(403);
    const struck = await inspector.call(strikePhoto, { photoId: own.body.id, reason: 'shows blade 2' });
    expect(struck.status).toBe(200);
    const twice = await technician.call(strikePhoto, { photoId: own.body.id, reason: 'again' });
    expect(twice.body.type).toBe('/problems/photo-struck');
    const row = (await ofFinding()).find(({ id }) => id === own.body.id);
    expect(row?.struck).toMatchObject({ reason: 'shows blade 2', by: { id: job.people.inspector.personId } });
    expect((await fetched(`/api/photos/${own.body.id}/file`)).status).toBe(200);
  });

  it('an altered picture is not handed out, and verification names it, and a row that names nothing kept', async () => {
    const files = join(shop.dataFolder, 'files');
    await takeAnchor(shop.databaseUrl, new KeyFolder(join(shop.dataFolder, 'keys')), new Date());
    expect((await verifyDatabase(shop.databaseUrl, files)).faults).toEqual([]);
    const owner = new pg.Client({ connectionString: shop.databaseUrl });
    await owner.connect();
    const { rows } = await owner.query('SELECT file_hash AS hash FROM photos WHERE id = $1', [photoId]);
    const hash: string = rows[0].hash;
    await writeFile(join(files, hash.slice(0, 2), hash), await jpeg(10, 10));
    expect((await fetched(`/api/photos/${photoId}/file`)).status).toBe(409);
    const altered = await verifyDatabase(shop.databaseUrl, files);
    expect(altered.faults).toEqual([{ place: `file ${hash}`, reason: 'the file was changed' }]);
    await owner.query('SET session_replication_role = replica');
    await owner.query('DELETE FROM stored_files WHERE hash = $1', [hash]);
    await owner.query("UPDATE photos SET title = 'Nothing to see' WHERE id = $1", [photoId]);
    await owner.end();
    const { faults } = await verifyDatabase(shop.databaseUrl, files);
    const notKept = `the file ${hash} it names is not among the kept ones`;
    expect(faults).toContainEqual({ place: `table photos, row ${photoId}`, reason: notKept });
    expect(faults).toContainEqual({
      place: expect.stringMatching(/^table photos, rows covered by anchor/),
      reason: expect.stringMatching(/changed/),
    });
  });
});
