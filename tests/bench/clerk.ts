import { randomUUID } from 'node:crypto';
import { type Shot, send } from './load.ts';

/** A signed-in clerk of the parts room at the server measured, and the two bins he moves pieces between. */
export interface Clerk {
  readonly port: number;
  readonly cookie: string;
  readonly bins: readonly [string, string];
}

/** How long the answer took, in milliseconds of real time. */
export async function answered(port: number, shot: Shot): Promise<number> {
  const { status, milliseconds, body } = await send(port, shot);
  if (status !== 200) throw new Error(`${shot.path} answered ${status}: ${body.slice(0, 300)}`);
  return milliseconds;
}

export function move({ cookie, bins }: Clerk, lot: string): Shot {
  return {
    method: 'POST',
    path: `/api/inventory/lots/${lot}/moves`,
    headers: { cookie, 'content-type': 'application/json', 'idempotency-key': randomUUID() },
    body: JSON.stringify({ from: bins[0], to: bins[1], quantity: 1 }),
  };
}
