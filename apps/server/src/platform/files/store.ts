import { createHash, randomBytes } from 'node:crypto';
import { createReadStream } from 'node:fs';
import { mkdir, open, readdir, readFile, rename, rm, stat, unlink } from 'node:fs/promises';
import { dirname, join } from 'node:path';
import type { Readable } from 'node:stream';
import { Problem } from '@hubwright/contracts/problems';
import { takeLocks } from '../command/locks.ts';
import type { Tx } from '../database/client.ts';

/** Signed papers and photos by the SHA-256 of their bytes. The same bytes are kept once; kept bytes are never changed. */
export interface FileStore {
  /** Keeps the bytes on disk before the row is written, so that a row never names a file that is not there. Answers the hash. */
  put(context: { tx: Tx; now: Date }, file: FileToKeep): Promise<string>;
  /** Moves finished files of a workplace under their hashes, before the row that names them is written. */
  take(tx: Tx, files: readonly FinishedFile[]): Promise<void>;
  /** Writes the rows of files whose bytes are here, the first of which is the picture the others show small. Throws `upload-gone`. */
  name(context: { tx: Tx; now: Date }, files: readonly FileToName[]): Promise<void>;
  /** The bytes as they were kept. Throws `not-found`, or `file-damaged` when they no longer have their hash. */
  read(hash: string): Promise<Buffer>;
  /** The same as a stream of constant memory, checked before its first byte. */
  open(hash: string): Promise<Readable>;
  /** Takes bytes away that no row names; the caller holds the file's lock and has made sure of that. */
  discard(hash: string): Promise<void>;
  /** Runs with a folder of its own inside the store's, gone afterwards with all that is still in it. */
  workplace<T>(work: (folder: string) => Promise<T>): Promise<T>;
  /** Takes away workplaces that a killed server left, when nothing in them changed since `before`. */
  clearWorkplaces(before: Date): Promise<void>;
  /** Hashes kept in one of the 256 parts of the store since before an instant. */
  keptBefore(part: string, before: Date): Promise<string[]>;
}
export const FILES = Symbol('FileStore');

export interface FileToKeep {
  readonly bytes: Uint8Array;
  readonly mediaType: string;
  readonly title: string;
}
export interface FinishedFile {
  readonly hash: string;
  /** Where it lies, on the store's own disk. */
  readonly path: string;
}
export interface FileToName {
  readonly hash: string;
  readonly size: number;
  readonly mediaType: string;
  readonly title: string;
}

/** Name of the lock under which bytes come and go. */
export const fileLock = (hash: string) => `file:${hash}`;

const incoming = 'incoming';

/** A folder with one file per hash. Names come from hashes and chance alone, never from what a person typed. */
export class FolderFileStore implements FileStore {
  constructor(private readonly folder: string) {}

  async put({ tx, now }: { tx: Tx; now: Date }, file: FileToKeep): Promise<string> {
    const hash = createHash('sha256').update(file.bytes).digest('hex');
    const { mediaType, title } = file;
    await this.workplace(async (folder) => {
      const path = join(folder, 'file');
      await write(path, file.bytes);
      await this.take(tx, [{ hash, path }]);
    });
    await tx.storedFile.createMany({
      data: [{ hash, size: file.bytes.byteLength, mediaType, title, createdAt: now }],
      skipDuplicates: true,
    });
    return hash;
  }

  async take(tx: Tx, files: readonly FinishedFile[]): Promise<void> {
    await takeLocks(
      tx,
      files.map(({ hash }) => fileLock(hash)),
    );
    for (const { hash, path } of files) await this.keep(hash, path);
  }

  async name({ tx, now }: { tx: Tx; now: Date }, files: readonly FileToName[]): Promise<void> {
    for (const { hash, size } of files) {
      const kept = await stat(this.path(hash)).catch(() => undefined);
      if (kept?.size !== size)
        throw new Problem('upload-gone', 'The bytes of this file are not here any more', { hash });
    }
    const first = files[0]?.hash;
    await tx.storedFile.createMany({
      data: files.map((file) => ({
        ...file,
        createdAt: now,
        thumbnailOf: file.hash === first ? null : (first ?? null),
      })),
      skipDuplicates: true,
    });
  }

  async read(hash: string): Promise<Buffer> {
    const bytes = await readFile(this.path(hash)).catch(() => {
      throw gone(hash);
    });
    if (createHash('sha256').update(bytes).digest('hex') !== hash) throw damaged(hash);
    return bytes;
  }

  async open(hash: string): Promise<Readable> {
    const path = this.path(hash);
    if (!(await exists(path))) throw gone(hash);
    const now = createHash('sha256');
    for await (const piece of createReadStream(path)) now.update(piece);
    if (now.digest('hex') !== hash) throw damaged(hash);
    return createReadStream(path);
  }

  async discard(hash: string): Promise<void> {
    await rm(this.path(hash), { force: true });
  }

  async workplace<T>(work: (folder: string) => Promise<T>): Promise<T> {
    const folder = join(this.folder, incoming, randomBytes(12).toString('hex'));
    await mkdir(folder, { recursive: true });
    try {
      return await work(folder);
    } finally {
      await rm(folder, { recursive: true, force: true });
    }
  }

  async clearWorkplaces(before: Date): Promise<void> {
    const folder = join(this.folder, incoming);
    for (const name of await readdir(folder).catch(() => [])) {
      const at = await stat(join(folder, name)).catch(() => undefined);
      if (at && at.mtime < before) await rm(join(folder, name), { recursive: true, force: true });
    }
  }

  async keptBefore(part: string, before: Date): Promise<string[]> {
    const found: string[] = [];
    for (const name of await readdir(join(this.folder, part)).catch(() => [])) {
      const at = isHash(name) ? await stat(this.path(name)).catch(() => undefined) : undefined;
      if (at && at.mtime < before) found.push(name);
    }
    return found;
  }

  /** Renamed when it is whole and on disk, so that a killed server leaves a whole file or none. */
  private async keep(hash: string, from: string): Promise<void> {
    const path = this.path(hash);
    if (await exists(path)) return;
    await mkdir(dirname(path), { recursive: true });
    await rename(from, path);
    await onDisk(dirname(path));
  }

  private path(hash: string): string {
    if (!isHash(hash)) throw gone(hash);
    return join(this.folder, hash.slice(0, 2), hash);
  }
}

async function write(path: string, bytes: Uint8Array): Promise<void> {
  const handle = await open(path, 'wx', 0o640);
  try {
    await handle.writeFile(bytes);
    await handle.sync();
  } catch (error) {
    await unlink(path).catch(() => undefined);
    throw error;
  } finally {
    await handle.close();
  }
}

/** Brings a file, or the names in a folder, to the disk. Some systems cannot open a folder; there the file alone is safe. */
export async function onDisk(path: string): Promise<void> {
  const handle = await open(path, 'r').catch(() => undefined);
  await handle?.sync().catch(() => undefined);
  await handle?.close();
}

function isHash(name: string): boolean {
  return /^[0-9a-f]{64}$/.test(name);
}

async function exists(path: string): Promise<boolean> {
  return stat(path).then(
    () => true,
    () => false,
  );
}

function gone(hash: string): Problem {
  return new Problem('not-found', `There is no stored file ${hash.slice(0, 12)}`, { hash });
}

function damaged(hash: string): Problem {
  return new Problem('file-damaged', `The stored file ${hash.slice(0, 12)}… was changed after it was kept`, { hash });
}
