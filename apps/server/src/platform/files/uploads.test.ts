// size: one table of bad files and what becomes of good ones, told on one server
import { createHash, randomBytes, randomUUID } from 'node:crypto';
import { mkdir, readdir, utimes, writeFile } from 'node:fs/promises';
import { request as httpRequest } from 'node:http';
import { connect } from 'node:net';
import { join } from 'node:path';
import { setTimeout as wait } from 'node:timers/promises';
import { deflateSync } from 'node:zlib';
import { fileBytesLimit } from '@hubwright/contracts/files/limits';
import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import sharp from 'sharp';
import { personWith, setUp, signedIn } from '../../../../../tests/support/builders.ts';
import {
  chunk,
  drawn,
  heavyJpeg,
  jpeg,
  packed,
  pdf,
  png,
  pngWith,
  sendFile,
} from '../../../../../tests/support/pictures.ts';
import { ShopApp, type Visitor } from '../../../../../tests/support/shop-app.ts';
import { Reads } from '../database/reads.ts';
import { Slots } from '../http/slots.ts';
import { StagedFiles } from './staged-files.ts';

const html = Buffer.from('<!doctype html><script>alert(1)</script>');
const svg = Buffer.from('<svg xmlns="http://www.w3.org/2000/svg"><script>alert(1)</script></svg>');
const script = '<< /S /JavaScript /JS (app.alert(1)) >>';
const cut = (bytes: Buffer, share: number) => bytes.subarray(0, Math.floor(bytes.length * share));

/** What is sent, as what, and how it is refused. */
const bad: [string, () => Buffer | Promise<Buffer>, string, number, string][] = [
  ['nothing', () => Buffer.alloc(0), 'image/jpeg', 415, 'file-kind-refused'],
  ['HTML called a JPEG', () => html, 'image/jpeg', 415, 'file-kind-refused'],
  ['a drawing with a script', () => svg, 'image/svg+xml', 415, 'file-kind-refused'],
  ['the same called a PNG', () => svg, 'image/png', 415, 'file-kind-refused'],
  [
    'a GIF that is a script too',
    () => Buffer.from('GIF89a/*\u0001\u0000*/=1;alert(1)//', 'latin1'),
    'image/gif',
    415,
    'file-kind-refused',
  ],
  ['HEIC', () => Buffer.from('\0\0\0\x18ftypheic\0\0\0\0mif1heic', 'latin1'), 'image/heic', 415, 'file-kind-refused'],
  ['a program', () => Buffer.from('MZ\x90\0\x03', 'latin1'), 'application/octet-stream', 415, 'file-kind-refused'],
  ['HTML as itself', () => html, 'text/html', 415, 'wrong-type'],
  ['a form', () => html, 'multipart/form-data; boundary=x', 415, 'wrong-type'],
  ['JSON', () => Buffer.from('{}'), 'application/json', 415, 'not-a-file'],
  ['a JPEG cut off', async () => cut(await jpeg(), 0.6), 'image/jpeg', 422, 'picture-damaged'],
  ['a JPEG of its head alone', async () => (await jpeg()).subarray(0, 20), 'image/jpeg', 422, 'picture-damaged'],
  ['a PNG cut off', async () => cut(await drawn(300, 200).png().toBuffer(), 0.5), 'image/png', 422, 'picture-damaged'],
  [
    'a WebP cut off',
    async () => cut(await drawn(300, 200).webp().toBuffer(), 0.5),
    'image/webp',
    422,
    'picture-damaged',
  ],
  [
    'noise after a JPEG mark',
    () => Buffer.concat([Buffer.from([255, 216, 255]), randomBytes(5_000)]),
    'image/jpeg',
    422,
    'picture-damaged',
  ],
  [
    'ten thousand million pixels said',
    () => png(100_000, 100_000, Buffer.alloc(100)),
    'image/png',
    422,
    'picture-too-large',
  ],
  [
    'a hundred million pixels in 100 KB',
    () => png(10_000, 10_000, Buffer.alloc(10_001 * 10_000)),
    'image/png',
    422,
    'picture-too-large',
  ],
  ['a picture with no height', () => png(10, 0, Buffer.alloc(10)), 'image/png', 422, 'picture-damaged'],
  ['a PDF cut off', () => cut(pdf(), 0.8), 'application/pdf', 422, 'pdf-refused'],
  ['a PDF with a page of HTML behind it', () => Buffer.concat([pdf(), html]), 'application/pdf', 422, 'pdf-refused'],
  ['a PDF behind HTML', () => Buffer.concat([html, pdf()]), 'application/pdf', 415, 'file-kind-refused'],
  ['a PDF with a script', () => pdf([script]), 'application/pdf', 422, 'pdf-refused'],
  [
    'the same in other letters',
    () => pdf([script.replace('/JavaScript', '/J#61vaScr#69pt')]),
    'application/pdf',
    422,
    'pdf-refused',
  ],
  ['the same packed away', () => pdf([packed(script)]), 'application/pdf', 422, 'pdf-refused'],
  [
    'the same packed under another name',
    () => pdf([packed(script).replace('ObjStm', '#4fbjStm')]),
    'application/pdf',
    422,
    'pdf-refused',
  ],
  ['objects packed to a gigabyte', () => pdf([packed(' '.repeat(40_000_000))]), 'application/pdf', 422, 'pdf-refused'],
  ['a PDF that starts a program', () => pdf(['<< /S /Launch /F (cmd.exe) >>']), 'application/pdf', 422, 'pdf-refused'],
  ['a PDF with files inside', () => pdf(['<< /Type /EmbeddedFile >>']), 'application/pdf', 422, 'pdf-refused'],
  ['a protected PDF', () => pdf([], '/Encrypt 3 0 R'), 'application/pdf', 422, 'pdf-refused'],
  ['a byte too many', () => Buffer.alloc(fileBytesLimit + 1, 255), 'image/jpeg', 413, 'file-too-large'],
];

describe('files people send', () => {
  let shop: ShopApp;
  let technician: Visitor;
  let now = new Date();
  beforeAll(async () => {
    shop = await ShopApp.open('empty', { clock: { now: () => now } });
    await setUp(shop);
    technician = await signedIn(shop, (await personWith(shop, 'technician')).signInName);
  });
  afterAll(() => shop.close());

  /** Names of everything in the folder, and the rows that name files. */
  async function kept() {
    const names = await readdir(join(shop.dataFolder, 'files'), { recursive: true, withFileTypes: true }).catch(
      () => [],
    );
    const { models } = shop.running.app.get(Reads);
    return {
      files: names
        .filter((entry) => entry.isFile())
        .map(({ name }) => name)
        .sort(),
      workplaces: names.filter(({ parentPath }) => parentPath.endsWith('incoming')).length,
      rows: (await models.stagedFile.count()) + (await models.storedFile.count()),
    };
  }
  const nothing = { files: [], workplaces: 0, rows: 0 };
  const send = (bytes: Uint8Array, more: Omit<Parameters<typeof sendFile>[2], 'bytes'> = {}) =>
    sendFile(shop, technician, { bytes, ...more });

  it.each(bad)('%s is refused and nothing is kept', async (_, make, type, status, problem) => {
    const answer = await send(await make(), { type });
    expect([answer.status, answer.body.type]).toEqual([status, `/problems/${problem}`]);
    expect(answer.body.detail).not.toContain(shop.dataFolder);
    expect(await kept()).toEqual(nothing);
  });

  it('are refused as too large before they have been read: by their length, and by what came', async () => {
    const tooLong = await raw({ 'content-length': String(10 * fileBytesLimit) }, 0);
    expect(tooLong).toMatchObject({ status: 413, sent: 0 });
    const unsaid = await raw({ 'transfer-encoding': 'chunked' }, 100 * fileBytesLimit);
    expect(unsaid.status).toBe(413);
    expect(unsaid.sent).toBeLessThan(10 * fileBytesLimit);
    expect(await kept()).toEqual(nothing);
  });

  /** Sends pieces until an answer comes; answers how much went out by then. */
  function raw(headers: Record<string, string>, most: number): Promise<{ status: number; sent: number }> {
    return new Promise((resolve, reject) => {
      let sent = 0;
      let answered = false;
      const ask = httpRequest(`${shop.address}/api/files`, {
        method: 'POST',
        headers: {
          cookie: technician.cookie,
          'content-type': 'image/jpeg',
          'idempotency-key': randomUUID(),
          ...headers,
        },
      });
      ask.on('response', (answer) => {
        answered = true;
        answer.resume();
        resolve({ status: answer.statusCode ?? 0, sent });
        ask.destroy();
      });
      ask.on('error', (error) => (answered ? undefined : reject(error)));
      const piece = Buffer.alloc(65_536, 255);
      const go = () => {
        while (!answered && sent < most) {
          sent += piece.length;
          if (!ask.write(piece)) return void ask.once('drain', go);
        }
      };
      ask.flushHeaders();
      go();
    });
  }

  it('leave nothing when the sender goes away or says nothing more', async () => {
    const { port } = new URL(shop.address);
    const line = connect(Number(port), '127.0.0.1');
    line.write(
      `POST /api/files HTTP/1.1\r\nhost: 127.0.0.1:${port}\r\ncookie: ${technician.cookie}\r\ncontent-type: image/jpeg\r\nidempotency-key: ${randomUUID()}\r\ncontent-length: 100000\r\n\r\n`,
    );
    line.write((await jpeg()).subarray(0, 5_000));
    await until(async () => (await kept()).workplaces > 0);
    line.destroy();
    await until(async () => (await kept()).workplaces === 0);
    expect(await kept()).toEqual(nothing);
  });

  it('need a session, a role and our own page, as any command does', async () => {
    const bytes = await jpeg(40, 30);
    const clerk = await signedIn(shop, (await personWith(shop, 'parts-room')).signInName);
    expect(await sendFile(shop, shop.visitor(), { bytes })).toMatchObject({ status: 401 });
    expect(await sendFile(shop, clerk, { bytes })).toMatchObject({ status: 403 });
    expect(await send(bytes, { headers: { 'sec-fetch-site': 'cross-site' } })).toMatchObject({ status: 403 });
    expect(await send(bytes, { headers: { origin: 'https://elsewhere.example.com' } })).toMatchObject({ status: 403 });
    expect(await send(bytes, { key: 'x' })).toMatchObject({ status: 400 });
    const session = await fetch(`${shop.address}/api/session`, {
      method: 'POST',
      headers: { 'content-type': 'image/jpeg', 'idempotency-key': randomUUID() },
      body: new Uint8Array(bytes),
    });
    expect(session.status).toBeLessThan(500);
    expect(session.status).toBeGreaterThanOrEqual(400);
    expect(await kept()).toEqual(nothing);
  });

  it('are kept under hashes alone, drawn anew upright, small enough, without what the camera wrote', async () => {
    const withPlace = await drawn(4_000, 1_000)
      .jpeg()
      .withExif({
        IFD0: { Copyright: 'someone' },
        IFD3: { GPSLatitude: '51/1 30/1 0/1', GPSLatitudeRef: 'N' },
      })
      .withMetadata({ orientation: 6 })
      .toBuffer();
    expect((await sharp(withPlace).metadata()).exif?.toString('latin1')).toContain('someone');
    const names = {
      'content-disposition': 'attachment; filename="../../../etc/passwd"',
      'x-file-name': '..\\..\\evil.exe',
    };
    const answer = await send(withPlace, { type: 'image/png', headers: names });
    expect(answer).toMatchObject({ status: 200, body: { mediaType: 'image/jpeg', width: 640, height: 2_560 } });
    const { files, workplaces, rows } = await kept();
    expect({ count: files.length, workplaces, rows }).toEqual({ count: 2, workplaces: 0, rows: 1 });
    expect(files.every((name) => /^[0-9a-f]{64}$/.test(name))).toBe(true);
    const sizes: (number | undefined)[][] = [];
    for (const hash of files) {
      const bytes = await shop.running.files.read(hash);
      const head = await sharp(bytes).metadata();
      expect([head.format, head.exif, head.icc, head.xmp, head.iptc, head.orientation]).toEqual([
        'jpeg',
        ...Array(5).fill(undefined),
      ]);
      sizes.push([head.width, head.height]);
    }
    expect(sizes).toEqual(
      expect.arrayContaining([
        [640, 2_560],
        [80, 320],
      ]),
    );
  });

  it('lose what hid behind the picture, and a bomb inside its notes stays packed', async () => {
    const before = process.memoryUsage().rss;
    const notes = chunk('zTXt', Buffer.concat([Buffer.from('a\0\0'), deflateSync(Buffer.alloc(40_000_000))]));
    const bomb = await send(pngWith([notes], { width: 40, height: 30, rows: Buffer.alloc(41 * 30) }), {
      type: 'image/png',
    });
    expect(bomb.status).toBe(200);
    const longer = await send(png(40, 30, Buffer.alloc(20_000_000)), { type: 'image/png' });
    expect(longer.status).toBe(200);
    expect(process.memoryUsage().rss - before).toBeLessThan(400_000_000);
    const hidden = await send(Buffer.concat([await jpeg(50, 40), html]));
    expect((await shop.running.files.read(String(hidden.body.hash))).toString('latin1')).not.toContain('script');
  }, 60_000);

  it('a document is kept as it was sent', async () => {
    const bytes = pdf(['<< /Type /Annot /Subtype /Link >>', packed('<< /Type /Page >>')]);
    const answer = await send(bytes, { type: 'application/octet-stream' });
    expect(answer).toMatchObject({
      status: 200,
      body: { mediaType: 'application/pdf', size: bytes.length, width: null },
    });
    expect(await shop.running.files.read(String(answer.body.hash))).toEqual(bytes);
  });

  it('the same request is answered the same, its key with other bytes is refused', async () => {
    const [bytes, key] = [await jpeg(60, 50), randomUUID()];
    const first = await send(bytes, { key });
    expect(await send(bytes, { key })).toEqual(first);
    expect((await send(await jpeg(61, 50), { key })).body.type).toBe('/problems/key-reused');
  });

  it('that nothing names go after a day with their bytes; bytes without a row go too; the others stay', async () => {
    const answer = await send(await jpeg(90, 70, '#112233'));
    const hash = String(answer.body.hash);
    const pruning = shop.running.app.get(StagedFiles);
    await pruning.prune();
    expect((await kept()).files).toContain(hash);
    now = new Date(now.getTime() + 25 * 3_600_000);
    const fresh = await send(await jpeg(91, 70, '#332211'));
    await pruning.prune();
    const after = await kept();
    expect(after.rows).toBe(1);
    expect(after.files).not.toContain(hash);
    expect(after.files).toContain(String(fresh.body.hash));
    const orphan = createHash('sha256').update('orphan').digest('hex');
    await mkdir(join(shop.dataFolder, 'files', orphan.slice(0, 2)), { recursive: true });
    await writeFile(join(shop.dataFolder, 'files', orphan.slice(0, 2), orphan), 'orphan');
    await pruning.sweep();
    expect((await kept()).files).toContain(orphan);
    const old = new Date(Date.now() - 48 * 3_600_000);
    for (const name of [...after.files, orphan])
      await utimes(join(shop.dataFolder, 'files', name.slice(0, 2), name), old, old);
    await pruning.sweep();
    expect((await kept()).files.sort()).toEqual((await fileHashes()).sort());
  });

  async function fileHashes(): Promise<string[]> {
    const rows = await shop.running.app.get(Reads).models.stagedFile.findMany();
    return rows.flatMap(({ hash, thumbnailHash }) => (thumbnailHash ? [hash, thumbnailHash] : [hash]));
  }

  it('of ten megabytes, fifty of them, do not make the server grow', async () => {
    const bytes = await heavyJpeg();
    expect(bytes.length).toBeGreaterThan(8_000_000);
    const megabytes = () => Math.round(process.memoryUsage().rss / 1e6);
    const seen: number[] = [];
    for (let round = 0; round < 12; round += 1) {
      const answers = await Promise.all([0, 1].map(() => send(bytes)));
      expect(answers.map(({ status }) => status)).toEqual([200, 200]);
      seen.push(megabytes());
    }
    console.log(
      `resident megabytes over ${seen.length * 2} uploads of ${Math.round(bytes.length / 1e6)} MB: ${seen.join(', ')}`,
    );
    expect(Math.max(...seen.slice(6)) - Math.max(...seen.slice(0, 6))).toBeLessThan(200);
  }, 120_000);
});

describe('room for files on their way', () => {
  it('is bounded, for all and for one person', () => {
    const slots = new Slots(3, 2, 'files are being received');
    const leave = [slots.enter('one'), slots.enter('one')];
    expect(() => slots.enter('one')).toThrow('2 of them are yours');
    leave.push(slots.enter('two'));
    expect(() => slots.enter('three')).toThrow('busy');
    leave[0]?.();
    expect(() => slots.enter('three')).not.toThrow();
  });
});

async function until(holds: () => Promise<boolean>): Promise<void> {
  for (let tries = 0; tries < 100; tries += 1) {
    if (await holds()) return;
    await wait(50);
  }
  throw new Error('it never came to be');
}
