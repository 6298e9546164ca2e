import { createHash, randomBytes } from 'node:crypto';
import { createReadStream } from 'node:fs';
import { mkdir, open, readFile, rename, stat, unlink } from 'node:fs/promises';
import { join } from 'node:path';
import type { Readable } from 'node:stream';
import { Problem } from '@hubwright/contracts/problems';
import type { Tx } from '../database/client.ts';

/** Signed papers and photos by the SHA-256 of their bytes. The same bytes are kept once; kept bytes are never changed. */
export interface FileStore {
  /** Keeps the bytes on disk before the row is written, so that a row never names a file that is not there. Answers the hash. */
  put(context: { tx: Tx; now: Date }, file: FileToKeep): Promise<string>;
  /** The bytes as they were kept. Throws `not-found`, or `file-damaged` when they no longer have their hash. */
  read(hash: string): Promise<Buffer>;
  /** The same as a stream of constant memory, unchecked. Throws `not-found`. */
  open(hash: string): Promise<Readable>;
}
export const FILES = Symbol('FileStore');

export interface FileToKeep {
  readonly bytes: Uint8Array;
  readonly mediaType: string;
  readonly title: string;
}

/** A folder with one file per hash. Names come from hashes alone, never from what a person typed. */
export class FolderFileStore implements FileStore {
  constructor(private readonly folder: string) {}

  async put({ tx, now }: { tx: Tx; now: Date }, file: FileToKeep): Promise<string> {
    const hash = createHash('sha256').update(file.bytes).digest('hex');
    await this.keep(hash, file.bytes);
    const { mediaType, title } = file;
    await tx.storedFile.createMany({
      data: [{ hash, size: file.bytes.byteLength, mediaType, title, createdAt: now }],
      skipDuplicates: true,
    });
    return hash;
  }

  async read(hash: string): Promise<Buffer> {
    const bytes = await readFile(this.path(hash)).catch(() => {
      throw gone(hash);
    });
    if (createHash('sha256').update(bytes).digest('hex') !== hash)
      throw new Problem('file-damaged', `The stored file ${hash.slice(0, 12)}… was changed after it was kept`, {
        hash,
      });
    return bytes;
  }

  async open(hash: string): Promise<Readable> {
    const path = this.path(hash);
    if (!(await exists(path))) throw gone(hash);
    return createReadStream(path);
  }

  /** Written beside and renamed, so that a killed server leaves a whole file or none. */
  private async keep(hash: string, bytes: Uint8Array): Promise<void> {
    const path = this.path(hash);
    if (await exists(path)) return;
    await mkdir(join(path, '..'), { recursive: true });
    const beside = `${path}.${randomBytes(6).toString('hex')}`;
    const handle = await open(beside, 'wx', 0o640);
    try {
      await handle.writeFile(bytes);
      await handle.sync();
      await handle.close();
      await rename(beside, path);
    } catch (error) {
      await handle.close().catch(() => undefined);
      await unlink(beside).catch(() => undefined);
      throw error;
    }
  }

  private path(hash: string): string {
    if (!/^[0-9a-f]{64}$/.test(hash)) throw gone(hash);
    return join(this.folder, hash.slice(0, 2), hash);
  }
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
