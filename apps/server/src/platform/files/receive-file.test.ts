import { mkdtemp, rm } from 'node:fs/promises';
import { createServer, request, type Server } from 'node:http';
import type { AddressInfo } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { setTimeout as wait } from 'node:timers/promises';
import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import { type Received, receiveFile } from './receive-file.ts';

describe('a file on its way', () => {
  let server: Server;
  let folder: string;
  let arrived: Promise<Received>;
  let files = 0;
  beforeAll(async () => {
    folder = await mkdtemp(join(tmpdir(), 'hubwright-receive-'));
    server = createServer((incoming, answer) => {
      files += 1;
      arrived = receiveFile(incoming, join(folder, String(files)), { silent: 300, whole: 900 });
      arrived.then(
        () => answer.end('kept'),
        () => undefined,
      );
    });
    await new Promise<void>((resolve) => server.listen(0, '127.0.0.1', resolve));
  });
  afterAll(async () => {
    server.closeAllConnections();
    await new Promise((resolve) => server.close(resolve));
    await rm(folder, { recursive: true, force: true });
  });

  /** Sends ten bytes at a time, `every` milliseconds, `pieces` times, of a file announced as `size` bytes. */
  async function send({ pieces, every, size }: { pieces: number; every: number; size: number }): Promise<Received> {
    const { port } = server.address() as AddressInfo;
    const out = request({ host: '127.0.0.1', port, method: 'POST', headers: { 'content-length': String(size) } });
    out.on('error', () => undefined);
    out.on('response', (answer) => answer.resume());
    const asked = new Promise((resolve) => server.once('request', resolve));
    out.flushHeaders();
    await asked;
    const kept = arrived;
    kept.catch(() => undefined);
    for (let piece = 0; piece < pieces && !out.destroyed; piece += 1) {
      out.write('ten bytes.');
      await wait(every);
    }
    return kept;
  }

  it('may come slowly, as long as it goes on coming', async () => {
    expect(await send({ pieces: 6, every: 80, size: 60 })).toMatchObject({ size: 60 });
  });

  it('is given up when its sender falls silent, and the place is free again', async () => {
    const began = Date.now();
    await expect(send({ pieces: 2, every: 10, size: 60 })).rejects.toMatchObject({ type: 'upload-broken' });
    expect(Date.now() - began).toBeGreaterThanOrEqual(290);
  });

  it('is given up when it takes too long in all, however steadily it drips', async () => {
    const began = Date.now();
    await expect(send({ pieces: 60, every: 60, size: 600 })).rejects.toMatchObject({ type: 'upload-broken' });
    expect(Date.now() - began).toBeGreaterThanOrEqual(890);
  });
});
