import { Agent, request } from 'node:http';
import type { Sending } from './malformed.ts';

export interface Received {
  readonly status: number;
  readonly headers: Readonly<Record<string, string | string[] | undefined>>;
  readonly text: string;
}

const agent = new Agent({ keepAlive: true, maxSockets: 4 });

/** Sends a request exactly as written: `fetch` would tidy paths, headers and methods first. */
export function sendRaw(address: string, sending: Omit<Sending, 'why'>): Promise<Received> {
  const { hostname, port } = new URL(address);
  const { method, url: path, headers, payload } = sending;
  return new Promise((resolve, reject) => {
    const length = payload === undefined ? {} : { 'content-length': String(Buffer.byteLength(payload)) };
    const out = request({ hostname, port, method, path, agent, headers: { ...headers, ...length } }, (answer) => {
      const pieces: Buffer[] = [];
      answer.on('data', (piece: Buffer) => pieces.push(piece));
      answer.on('error', reject);
      answer.on('end', () =>
        resolve({
          status: answer.statusCode ?? 0,
          headers: answer.headers,
          text: Buffer.concat(pieces).toString('utf8'),
        }),
      );
    });
    out.on('error', reject);
    out.end(payload);
  });
}
