import { randomUUID } from 'node:crypto';
import { crc32, deflateSync } from 'node:zlib';
import sharp, { type Sharp } from 'sharp';
import type { ShopApp, Visitor } from './shop-app.ts';

/** A picture nobody took: grain on a colour, so that it has bytes to lose. */
export async function jpeg(width = 800, height = 600, colour = '#8899aa'): Promise<Buffer> {
  return drawn(width, height, colour).jpeg({ quality: 90 }).toBuffer();
}

/** The same before a format is chosen. */
export function drawn(width: number, height: number, colour = '#8899aa'): Sharp {
  return sharp({
    create: { width, height, channels: 3, background: colour, noise: { type: 'gaussian', mean: 120, sigma: 40 } },
  });
}

/** A picture of about this many bytes. */
export async function heavyJpeg(): Promise<Buffer> {
  return drawn(2_600, 2_300).jpeg({ quality: 95, chromaSubsampling: '4:4:4' }).toBuffer();
}

/** A PNG as told, whether or not its rows are as many as it says (ISO/IEC 15948: signature, IHDR, IDAT, IEND). */
export function png(width: number, height: number, rows: Buffer): Buffer {
  return pngWith([], { width, height, rows });
}

/** The same with other chunks before the rows. */
export function pngWith(
  more: readonly Buffer[],
  { width, height, rows }: { width: number; height: number; rows: Buffer },
): Buffer {
  const head = Buffer.alloc(13);
  head.writeUInt32BE(width, 0);
  head.writeUInt32BE(height, 4);
  head.set([8, 0, 0, 0, 0], 8); // eight bits, grey, not interlaced
  const signature = Buffer.from([0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a]);
  const data = chunk('IDAT', deflateSync(rows, { level: 1 }));
  return Buffer.concat([signature, chunk('IHDR', head), ...more, data, chunk('IEND', Buffer.alloc(0))]);
}

export function chunk(name: string, content: Buffer): Buffer {
  const body = Buffer.concat([Buffer.from(name, 'latin1'), content]);
  const around = Buffer.alloc(8);
  around.writeUInt32BE(content.length, 0);
  around.writeUInt32BE(crc32(body), 4);
  return Buffer.concat([around.subarray(0, 4), body, around.subarray(4)]);
}

/** The least PDF there is, with these objects in it and this in its trailer. */
export function pdf(objects: readonly string[] = [], trailer = ''): Buffer {
  const all = ['<< /Type /Catalog /Pages 2 0 R >>', '<< /Type /Pages /Kids [] /Count 0 >>', ...objects];
  let text = '%PDF-1.7\n';
  const places = all.map((object, index) => {
    const at = text.length;
    text += `${index + 1} 0 obj\n${object}\nendobj\n`;
    return at;
  });
  const table = text.length;
  const lines = places.map((at) => `${String(at).padStart(10, '0')} 00000 n \n`).join('');
  text += `xref\n0 ${all.length + 1}\n0000000000 65535 f \n${lines}`;
  text += `trailer\n<< /Size ${all.length + 1} /Root 1 0 R ${trailer} >>\nstartxref\n${table}\n%%EOF\n`;
  return Buffer.from(text, 'latin1');
}

/** An object that holds others, packed (ISO 32000-2, 7.5.7). */
export function packed(inside: string): string {
  const body = deflateSync(Buffer.from(`10 0 ${inside}`, 'latin1')).toString('latin1');
  return `<< /Type /ObjStm /N 1 /First 5 /Filter /FlateDecode /Length ${body.length} >>\nstream\n${body}\nendstream`;
}

/** Sends bytes as a browser does. */
export async function sendFile(
  shop: Pick<ShopApp, 'address'>,
  visitor: Pick<Visitor, 'cookie'>,
  { bytes, type = 'image/jpeg', key = randomUUID(), headers = {} }: FileSent,
): Promise<{ status: number; body: Record<string, unknown> }> {
  const response = await fetch(`${shop.address}/api/files`, {
    method: 'POST',
    headers: { cookie: visitor.cookie, 'content-type': type, 'idempotency-key': key, ...headers },
    body: new Uint8Array(bytes),
  });
  return { status: response.status, body: (await response.json()) as Record<string, unknown> };
}

export interface FileSent {
  readonly bytes: Uint8Array;
  readonly type?: string;
  readonly key?: string;
  readonly headers?: Record<string, string>;
}
