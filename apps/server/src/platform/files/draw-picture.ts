import { stat } from 'node:fs/promises';
import { pictureSide, pixelLimit, thumbnailSide } from '@hubwright/contracts/files/limits';
import { Problem } from '@hubwright/contracts/problems';
import sharp from 'sharp';
import type { FileKind } from './file-kind.ts';

// One picture at a time, nothing remembered: what a picture costs is given back when it is done.
sharp.cache(false);
sharp.concurrency(1);

const options = { limitInputPixels: pixelLimit, failOn: 'error', pages: 1 } as const;
const secondsAllowed = 30;

export interface Drawn {
  readonly width: number;
  readonly height: number;
}

/**
 * Draws a picture anew as JPEG: upright, in the plain colour space, at most 2,560 pixels long, with nothing the camera wrote
 * beside it (place, serial, name), and a small one of 320. What hid behind the picture's bytes is not drawn.
 * @throws `picture-too-large`, `picture-damaged`
 */
export async function drawPicture(
  kind: FileKind,
  from: string,
  to: { picture: string; thumbnail: string },
): Promise<Drawn> {
  await refuseBombs(kind, from);
  try {
    const { width, height } = await sharp(from, options)
      .timeout({ seconds: secondsAllowed })
      .autoOrient()
      .resize({ width: pictureSide, height: pictureSide, fit: 'inside', withoutEnlargement: true })
      .flatten({ background: '#ffffff' })
      .toColourspace('srgb')
      .jpeg({ quality: 84 })
      .toFile(to.picture);
    await sharp(to.picture, options)
      .resize({ width: thumbnailSide, height: thumbnailSide, fit: 'inside', withoutEnlargement: true })
      .jpeg({ quality: 76 })
      .toFile(to.thumbnail);
    return { width, height };
  } catch (error) {
    if ((await stat(from).catch(() => undefined)) === undefined) throw error;
    throw damaged(error);
  }
}

/** Only the head is read here: size and kind are known before a pixel is decoded. */
async function refuseBombs(kind: FileKind, path: string): Promise<void> {
  const { format, width, height } = await sharp(path, { ...options, limitInputPixels: false })
    .metadata()
    .catch((error: unknown) => {
      throw damaged(error);
    });
  if (format !== kind) throw new Problem('picture-damaged', `The picture begins as ${kind} and goes on as ${format}`);
  if (width * height > pixelLimit)
    throw new Problem(
      'picture-too-large',
      `The picture has ${width} × ${height} pixels; at most ${pixelLimit / 1_000_000} million can be opened`,
      { width, height },
    );
}

function damaged(error: unknown): Problem {
  const said = error instanceof Error ? (error.message.split('\n')[0] ?? '') : '';
  // What the library says may name where the file lies.
  return new Problem('picture-damaged', `The picture could not be opened: ${said.replaceAll(/\S*\/\S+/g, '…')}`);
}
