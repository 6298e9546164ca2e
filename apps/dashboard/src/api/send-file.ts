import { fileBytesLimit } from '@hubwright/contracts/files/limits';
import type { fileOperations } from '@hubwright/contracts/files/operations';
import { fileOperations as operations } from '@hubwright/contracts/files/operations';
import type { Reply } from '@hubwright/contracts/operation';
import { problemFrom, unreachable } from './problem.ts';

export interface SendOptions {
  /** Idempotency-Key: the same for the same file, however often it is tried. */
  readonly key: string;
  /** Share that has left, 0 to 1. */
  readonly onProgress: (share: number) => void;
}

/**
 * Sends the bytes of one file. `fetch` cannot tell how much has left, so this is the older way.
 * @throws ProblemError
 */
export function sendFile(
  file: Blob,
  { key, onProgress }: SendOptions,
): Promise<Reply<typeof fileOperations.uploadFile>> {
  if (file.size > fileBytesLimit) return Promise.reject(tooLarge(file.size));
  return new Promise((resolve, reject) => {
    const request = new XMLHttpRequest();
    request.open('POST', operations.uploadFile.path);
    request.setRequestHeader('Content-Type', typeOf(file));
    request.setRequestHeader('Idempotency-Key', key);
    request.responseType = 'json';
    request.upload.addEventListener('progress', ({ loaded, total }) => onProgress(total > 0 ? loaded / total : 0));
    request.addEventListener('error', () => reject(unreachable()));
    request.addEventListener('abort', () => reject(unreachable()));
    request.addEventListener('load', () => {
      if (request.status === 200) resolve(request.response);
      else reject(problemFrom(request.status, request.response));
    });
    request.send(file);
  });
}

/** The server looks at the bytes; the type only has to be one it reads as a file. */
function typeOf(file: Blob): string {
  return /^(image\/[\w.+-]+|application\/pdf)$/.test(file.type) ? file.type : 'application/octet-stream';
}

function tooLarge(bytes: number) {
  return problemFrom(413, {
    type: '/problems/file-too-large',
    detail: `It has ${Math.ceil(bytes / 1024 / 1024)} megabytes. Nothing was sent.`,
  });
}
