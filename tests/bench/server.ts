import { spawn } from 'node:child_process';
import { createServer } from 'node:net';
import { send } from './load.ts';
import type { BenchShop } from './shop.ts';

/** The server as it ships, in a process of its own on the shop's database. */
export async function startServer(shop: BenchShop) {
  const port = await freePort();
  const child = spawn(process.execPath, ['apps/server/dist/main.js'], {
    env: { ...process.env, ...shop.environment, PORT: String(port), NODE_OPTIONS: '' },
    stdio: 'inherit',
  });
  for (let i = 0; i < 600; i += 1) {
    const ok = await send(port, { method: 'GET', path: '/api/health/ready', headers: {} }).then(
      (a) => a.status === 200,
      () => false,
    );
    if (ok) return { port, pid: child.pid ?? 0, stop: () => child.kill() };
    await new Promise((resolve) => setTimeout(resolve, 100));
  }
  throw new Error('the server did not start');
}

function freePort(): Promise<number> {
  return new Promise((resolve) => {
    const server = createServer();
    server.listen(0, '127.0.0.1', () => {
      const { port } = server.address() as { port: number };
      server.close(() => resolve(port));
    });
  });
}
