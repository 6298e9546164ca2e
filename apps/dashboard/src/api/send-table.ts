import { fileBytesLimit } from '@hubwright/contracts/files/limits';
import type { ImportKind } from '@hubwright/contracts/imports/kinds';
import { importOperations } from '@hubwright/contracts/imports/operations';
import type { Reply } from '@hubwright/contracts/operation';
import { newKey } from './call.ts';
import { problemFrom, unreachable } from './problem.ts';

/**
 * Sends the bytes of one table; the server looks at them, whatever the file is called.
 * @throws ProblemError
 */
export async function sendTable(kind: ImportKind, file: Blob): Promise<Reply<typeof importOperations.uploadTable>> {
  if (file.size > fileBytesLimit)
    throw problemFrom(413, { type: '/problems/file-too-large', detail: 'Nothing was sent.' });
  let response: Response;
  try {
    response = await fetch(importOperations.uploadTable.path.replace(':kind', kind), {
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
  return body as Reply<typeof importOperations.uploadTable>;
}
