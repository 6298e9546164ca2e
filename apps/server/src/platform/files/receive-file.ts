import { createHash } from 'node:crypto';
import { open } from 'node:fs/promises';
import type { IncomingMessage } from 'node:http';
import { fileBytesLimit } from '@hubwright/contracts/files/limits';
import { Problem } from '@hubwright/contracts/problems';

/** How long a sender may say nothing, and how long a file may take in all, in milliseconds. */
export interface Patience {
  readonly silent: number;
  readonly whole: number;
}
const lingerMilliseconds = 3_000;

export interface Received {
  readonly size: number;
  readonly sha256: string;
}

/**
 * Writes what a request carries into a new file, a piece at a time. Answers as soon as it is known to be too large.
 * @throws `file-too-large`, `upload-broken`
 */
export async function receiveFile(request: IncomingMessage, path: string, patience: Patience): Promise<Received> {
  if (Number(request.headers['content-length'] ?? 0) > fileBytesLimit) throw tooLarge(request);
  const watch = new Watch(request, patience);
  const file = await open(path, 'wx', 0o640);
  const hash = createHash('sha256');
  let size = 0;
  try {
    // Left open when reading stops early: the sender must still hear why.
    for await (const piece of request.iterator({ destroyOnReturn: false }) as AsyncIterable<Buffer>) {
      watch.heard();
      size += piece.length;
      if (size > fileBytesLimit) throw tooLarge(request);
      hash.update(piece);
      await file.writeFile(piece);
    }
    return { size, sha256: hash.digest('hex') };
  } catch (error) {
    throw request.destroyed
      ? new Problem('upload-broken', 'The sender went away before the end, or was too slow')
      : error;
  } finally {
    watch.stop();
    await file.close();
  }
}

/** Ends a request that is silent or slow: whoever holds a slot must give it back. */
class Watch {
  private readonly timers: readonly NodeJS.Timeout[];

  constructor(request: IncomingMessage, { silent, whole }: Patience) {
    const end = () => request.destroy(new Error('too slow'));
    this.timers = [setTimeout(end, silent), setTimeout(end, whole)];
  }

  heard(): void {
    this.timers[0]?.refresh();
  }

  stop(): void {
    for (const timer of this.timers) clearTimeout(timer);
  }
}

/** The rest is read and dropped for a moment, so that the answer is not lost with the connection; then the line is cut. */
function tooLarge(request: IncomingMessage): Problem {
  const cut = setTimeout(() => request.destroy(), lingerMilliseconds).unref();
  request.once('close', () => clearTimeout(cut));
  setImmediate(() => request.resume());
  return new Problem('file-too-large', `The file is larger than ${fileBytesLimit / 1024 / 1024} megabytes`);
}
