import type { FastifyReply, FastifyRequest } from 'fastify';
import type { FileStore } from './store.ts';

/** One kept file as it is handed out. */
export interface FileToSend {
  readonly hash: string;
  readonly size: number;
  readonly mediaType: string;
  /** The name a browser saves it under: made here, of letters, digits, dots and dashes. */
  readonly fileName: string;
}

/**
 * Streams a kept file. A browser asks again each time, so that someone who signed out sees nothing from its cache, and hears
 * that its copy still holds (RFC 9110, 13.1.2). Pictures are shown, documents are only ever saved; neither may run anything.
 */
export async function sendFile(
  { request, reply }: { request: FastifyRequest; reply: FastifyReply },
  files: FileStore,
  file: FileToSend,
): Promise<void> {
  const tag = `"${file.hash}"`;
  reply
    .header('etag', tag)
    .header('cache-control', 'private, no-cache')
    .header('content-security-policy', "default-src 'none'; sandbox; frame-ancestors 'none'")
    .header('x-content-type-options', 'nosniff');
  if (holds(request.headers['if-none-match'], tag)) {
    await reply.status(304).send();
    return;
  }
  const bytes = await files.open(file.hash);
  const place = file.mediaType.startsWith('image/') ? 'inline' : 'attachment';
  await reply
    .status(200)
    .header('content-disposition', `${place}; filename="${file.fileName}"`)
    .header('content-length', file.size)
    .type(file.mediaType)
    .send(bytes);
}

function holds(header: string | undefined, tag: string): boolean {
  return (header ?? '').split(',').some((each) => each.trim().replace(/^W\//, '') === tag);
}
