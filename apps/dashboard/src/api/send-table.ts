import { fileBytesLimit } from '@hubwright/contracts/files/limits';
import type { importOperations } from '@hubwright/contracts/imports/operations';
import type { Reply } from '@hubwright/contracts/operation';
import { newKey } from './call.ts';
import { problemFrom, unreachable } from './problem.ts';

type Uploaded = Reply<typeof importOperations.uploadTable>;

/**
 * Sends the bytes of one table; the server looks at them, whatever the file is called.
 * @throws ProblemError
 */
export async function sendTable(path: string, file: Blob): Promise<Pick<Uploaded, 'id'>> {
  if (file.size > fileBytesLimit)
    throw problemFrom(413, { type: '/problems/file-too-large', detail: 'Nothing was sent.' });
  let response: Response;
  try {
    response = await fetch(path, {
      method: 'POST',
      headers: { 'Content-Type': 'application/octet-stream', 'Idempotency-Key': newKey() },
      credentials: 'same-origin',
      body: file,
    });
  } catch {
    throw unreachable();
  }
  const body: unknown = await response.json().catch(() => undefined);
  if (!response.ok) throw problemFrom(response.status, body);
  return body as Uploaded;
}
