import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { judgeLot } from '../../apps/server/src/modules/inventory/judge-lot.command.ts';
import { Database } from '../../apps/server/src/platform/database/client.ts';
import { FolderFileStore } from '../../apps/server/src/platform/files/store.ts';
import { KeyFolder } from '../../apps/server/src/platform/records/shop-key.ts';
import { takeAnchor } from '../../apps/server/src/platform/records/take-anchor.ts';
import { copyOf, type TestDatabase } from './database.ts';
import { Job } from './job.ts';
import { pin } from './people.ts';
import { Stockroom } from './stockroom.ts';

const at = new Date('2026-11-25T12:00:00.000Z');
export const later = new Date('2026-11-25T12:10:00.000Z');

/** One shop with two anchors, a stored file and an entry after the last anchor; tests spoil copies of it. */
export interface SpoilableShop {
  readonly url: string;
  readonly files: string;
  readonly keys: KeyFolder;
  /** Where a test may write; gone with `remove`. */
  readonly folder: string;
  /** A lot whose chain both anchors saw. */
  readonly lotId: string;
  /** Of the stored file. */
  readonly hash: string;
  /** The same shop while its newest entries, a signature among them, are under no anchor. */
  readonly unanchored: TestDatabase;
  remove(): Promise<void>;
}

export async function spoilableShop(): Promise<SpoilableShop> {
  const folder = await mkdtemp(join(tmpdir(), 'hubwright-tamper-'));
  const room = await Stockroom.open();
  const url = room.shop.databaseUrl;
  const files = join(folder, 'files');
  const keys = new KeyFolder(join(folder, 'keys'));
  const lot = await room.received('washer', 10);
  await takeAnchor(url, keys, at);
  await room.shop.run(judgeLot, { lotId: lot.id, verdict: 'accepted', bin: 'B-01', signature: pin }, room.inspector, {
    version: lot.version,
  });
  const hash = await storedPaper(url, files);
  await takeAnchor(url, keys, later);
  await room.received('seal', 5);
  await Job.arrived(room.shop, '4797');
  await room.shop.running.close();
  const remove = () => rm(folder, { recursive: true, force: true });
  return { url, files, keys, folder, lotId: lot.id, hash, unanchored: await copyOf(url), remove };
}

async function storedPaper(url: string, files: string): Promise<string> {
  const database = new Database(url);
  const store = new FolderFileStore(files);
  const paper = { bytes: Buffer.from('a signed paper'), mediaType: 'text/plain', title: 'Paper' };
  const hash = await database.prisma.$transaction((tx) => store.put({ tx, now: at }, paper));
  await database.close();
  return hash;
}
