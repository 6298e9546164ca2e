import { createHash } from 'node:crypto';
import { createReadStream } from 'node:fs';
import { stat } from 'node:fs/promises';
import { join } from 'node:path';
import { checkPdf } from './check-pdf.ts';
import { drawPicture } from './draw-picture.ts';
import { kindOf } from './file-kind.ts';
import { onDisk } from './store.ts';

/** A file as it will be kept. */
export interface Finished {
  readonly path: string;
  readonly hash: string;
  readonly size: number;
}
/** What came of one received file: a document as it was sent, or a picture drawn anew with a small one. */
export interface FinishedUpload {
  readonly mediaType: 'image/jpeg' | 'application/pdf';
  readonly file: Finished;
  readonly picture?: { readonly width: number; readonly height: number; readonly thumbnail: Finished };
}

/** Decides by content what was received, and makes of it what is kept. Throws the problems of kind, picture and PDF. */
export async function finishFile(received: string, folder: string): Promise<FinishedUpload> {
  const kind = await kindOf(received);
  if (kind === 'pdf') {
    await checkPdf(received);
    return { mediaType: 'application/pdf', file: await finished(received) };
  }
  const [picture, thumbnail] = [join(folder, 'picture'), join(folder, 'thumbnail')];
  const { width, height } = await drawPicture(kind, received, { picture, thumbnail });
  return {
    mediaType: 'image/jpeg',
    file: await finished(picture),
    picture: { width, height, thumbnail: await finished(thumbnail) },
  };
}

async function finished(path: string): Promise<Finished> {
  const hash = createHash('sha256');
  for await (const piece of createReadStream(path)) hash.update(piece);
  await onDisk(path);
  return { path, hash: hash.digest('hex'), size: (await stat(path)).size };
}
