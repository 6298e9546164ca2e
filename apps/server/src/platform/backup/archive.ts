import { createHash, type Hash } from 'node:crypto';
import { createReadStream, createWriteStream } from 'node:fs';
import { open, rename, rm } from 'node:fs/promises';
import { Readable, type Writable } from 'node:stream';
import { finished, pipeline } from 'node:stream/promises';
import type { ReadableStream } from 'node:stream/web';
import { createGunzip, createGzip } from 'node:zlib';
import { Decrypter, Encrypter } from 'age-encryption';
import tar from 'tar-stream';

const ageHeader = 'age-encryption.org/v1';

/** Writes named pieces into one compressed file, encrypted by age (age-encryption.org/v1) when a passphrase is given. */
export class ArchiveWriter {
  private readonly pack = tar.pack();
  private readonly part: string;
  private readonly written: Promise<void>;

  constructor(
    private readonly file: string,
    passphrase: string | undefined,
  ) {
    this.part = `${file}.part`;
    this.written = write(this.pack, this.part, passphrase);
    this.written.catch(() => undefined); // told by end()
  }

  async add(name: string, content: Uint8Array): Promise<void> {
    await new Promise<void>((resolve, reject) => {
      this.pack.entry({ name, size: content.byteLength }, Buffer.from(content), (error) =>
        error ? reject(error) : resolve(),
      );
    });
  }

  async addFile(name: string, size: number, content: Readable): Promise<void> {
    const entry = this.pack.entry({ name, size });
    content.pipe(entry as unknown as Writable);
    await finished(entry as unknown as Writable);
  }

  /** On disk under its own name only when it is whole: one cut short keeps the ending `.part`. */
  async end(): Promise<void> {
    this.pack.finalize();
    await this.written;
    const handle = await open(this.part, 'r');
    await handle.sync();
    await handle.close();
    await rename(this.part, this.file);
  }

  async abandon(): Promise<void> {
    this.pack.destroy();
    await this.written.catch(() => undefined);
    await rm(this.part, { force: true });
  }
}

async function write(pack: tar.Pack, part: string, passphrase: string | undefined): Promise<void> {
  const compressed = pack.pipe(createGzip({ level: 6 }));
  const out = createWriteStream(part, { mode: 0o600 });
  pack.on('error', (error) => compressed.destroy(error));
  if (!passphrase) return pipeline(compressed, out);
  const encrypter = new Encrypter();
  encrypter.setPassphrase(passphrase);
  const encrypted = await encrypter.encrypt(Readable.toWeb(compressed) as globalThis.ReadableStream<Uint8Array>);
  await pipeline(Readable.fromWeb(encrypted as unknown as ReadableStream), out);
}

/** One piece as it is read; its content must be read before the next one is asked for. */
export interface Piece {
  readonly name: string;
  readonly size: number;
  readonly content: AsyncIterable<Uint8Array>;
}

/** The pieces of an archive in order. @throws Damaged, naming the piece after which nothing could be read */
export async function* readArchive(file: string, passphrase: string | undefined): AsyncGenerator<Piece> {
  const extract = tar.extract();
  let last = 'its beginning';
  const fed = feed(file, passphrase, extract);
  fed.catch((error) => extract.destroy(error));
  try {
    for await (const entry of extract) {
      last = entry.header.name;
      yield { name: last, size: entry.header.size ?? 0, content: named(entry as AsyncIterable<Uint8Array>, last) };
      entry.resume();
    }
    await fed;
  } catch (error) {
    throw asDamaged(error, last);
  }
}

/** What goes wrong while a piece is read is told like what goes wrong between two. */
async function* named(content: AsyncIterable<Uint8Array>, name: string): AsyncGenerator<Uint8Array> {
  try {
    yield* content;
  } catch (error) {
    throw asDamaged(error, name);
  }
}

function asDamaged(error: unknown, name: string): Damaged {
  if (error instanceof Damaged) return error;
  return new Damaged(`The backup is damaged or cut short at ${name}: ${(error as Error).message}`);
}

/** The file cannot be trusted, or not be read; nothing of it is used. */
export class Damaged extends Error {}

async function feed(file: string, passphrase: string | undefined, into: tar.Extract): Promise<void> {
  const source = createReadStream(file);
  const encrypted = (await firstBytes(file)) === ageHeader;
  if (encrypted && !passphrase) throw new Damaged('The backup is encrypted: set HUBWRIGHT_BACKUP_PASSPHRASE.');
  const plain = encrypted ? await decrypted(source, passphrase ?? '') : source;
  await pipeline(plain, createGunzip(), into as unknown as Writable);
}

async function decrypted(source: Readable, passphrase: string): Promise<Readable> {
  const decrypter = new Decrypter();
  decrypter.addPassphrase(passphrase);
  try {
    const plain = await decrypter.decrypt(Readable.toWeb(source) as globalThis.ReadableStream<Uint8Array>);
    return Readable.fromWeb(plain as unknown as ReadableStream);
  } catch {
    throw new Damaged('The passphrase does not open this backup, or its head was changed.');
  }
}

async function firstBytes(file: string): Promise<string> {
  const handle = await open(file, 'r');
  try {
    const { buffer, bytesRead } = await handle.read(Buffer.alloc(ageHeader.length), 0, ageHeader.length, 0);
    return buffer.subarray(0, bytesRead).toString('latin1');
  } finally {
    await handle.close();
  }
}

/** Counts and hashes bytes on their way. */
export class Sum {
  private readonly hash: Hash = createHash('sha256');
  bytes = 0;

  add(piece: Uint8Array): void {
    this.hash.update(piece);
    this.bytes += piece.byteLength;
  }

  end(): { bytes: number; sha256: string } {
    return { bytes: this.bytes, sha256: this.hash.digest('hex') };
  }
}
