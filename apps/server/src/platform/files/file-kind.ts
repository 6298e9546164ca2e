import { open } from 'node:fs/promises';
import { Problem } from '@hubwright/contracts/problems';

/** What the bytes are, whatever the sender calls them. */
export type FileKind = 'jpeg' | 'png' | 'webp' | 'pdf';

const ascii = (head: Buffer, from: number, length: number) => head.subarray(from, from + length).toString('latin1');

/**
 * The kind a file begins as. Signatures: JPEG SOI and a marker (ITU-T T.81, B.1.1.3), PNG (ISO/IEC 15948, 5.2), WebP in RIFF
 * (RFC 9649, 2.4), PDF header (ISO 32000-2, 7.5.2), ISO base media brands (ISO/IEC 14496-12, 4.3).
 * @throws `file-kind-refused`
 */
export async function kindOf(path: string): Promise<FileKind> {
  const head = await firstBytes(path);
  if (head.length === 0) throw refused('The file is empty');
  if (head[0] === 0xff && head[1] === 0xd8 && head[2] === 0xff) return 'jpeg';
  if (head.subarray(0, 8).equals(Buffer.from([0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a]))) return 'png';
  if (ascii(head, 0, 4) === 'RIFF' && ascii(head, 8, 4) === 'WEBP') return 'webp';
  if (/^%PDF-[12]\.\d/.test(ascii(head, 0, 8))) return 'pdf';
  if (ascii(head, 4, 4) === 'ftyp' && /^(hei[cmsx]|hev[cmsx]|mif1|msf1|avif|avis)/.test(ascii(head, 8, 4)))
    throw refused('The picture is in HEIC or AVIF, which cannot be opened here');
  throw refused('The bytes are neither a JPEG, PNG or WebP picture nor a PDF, whatever the file is called');
}

async function firstBytes(path: string): Promise<Buffer> {
  const handle = await open(path, 'r');
  try {
    const { buffer, bytesRead } = await handle.read(Buffer.alloc(32), 0, 32, 0);
    return buffer.subarray(0, bytesRead);
  } finally {
    await handle.close();
  }
}

function refused(detail: string): Problem {
  return new Problem('file-kind-refused', detail);
}
