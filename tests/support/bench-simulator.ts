import { createServer, type Server, type Socket } from 'node:net';

/** A governor bench that sends what a test tells it to, on a port of its own. */
export class BenchSimulator {
  private readonly sockets = new Set<Socket>();
  /** How often somebody connected. */
  connections = 0;
  private constructor(private readonly server: Server) {}

  static async listen(port = 0): Promise<BenchSimulator> {
    const server = createServer();
    const bench = new BenchSimulator(server);
    server.on('connection', (socket) => {
      bench.connections += 1;
      bench.sockets.add(socket);
      socket.on('close', () => bench.sockets.delete(socket));
      socket.on('error', () => socket.destroy());
    });
    await new Promise<void>((resolve) => server.listen(port, '127.0.0.1', resolve));
    return bench;
  }

  get port(): number {
    return (this.server.address() as { port: number }).port;
  }
  get watchers(): number {
    return this.sockets.size;
  }

  /** Bytes as they are, to everyone connected. */
  send(text: string | Buffer): void {
    for (const socket of this.sockets) socket.write(text);
  }

  /** One reading as the format has it, read at `at` or now. */
  read(channel: string, [value, unit]: readonly [value: number, unit: string], at = new Date()): void {
    this.send(`${JSON.stringify({ at: at.toISOString(), channel, value, unit })}\n`);
  }

  /** Cuts every connection, as a pulled cable does. */
  cut(): void {
    for (const socket of this.sockets) socket.destroy();
  }

  async close(): Promise<void> {
    this.cut();
    await new Promise((resolve) => this.server.close(resolve));
  }
}

/** Waits until it is so, at most five seconds. */
export async function until(satisfied: () => boolean | Promise<boolean>): Promise<void> {
  const end = Date.now() + 5_000;
  while (!(await satisfied())) {
    if (Date.now() > end) throw new Error(`Not so within five seconds: ${satisfied}`);
    await new Promise((resolve) => setTimeout(resolve, 20));
  }
}
