import { readFileSync } from 'node:fs';
import http from 'node:http';

/** One request a row sends over and over. */
export interface Shot {
  readonly method: 'GET' | 'POST';
  readonly path: string;
  readonly headers: Record<string, string>;
  readonly body?: string;
}

const agent = new http.Agent({ keepAlive: true, maxSockets: 64 });
/** Linux counts processor time in hundredths of a second. */
const millisecondsPerTick = 10;

/** Processor time a process has used so far, user and system, its threads included. */
export function cpuMilliseconds(pid: number): number {
  const fields = readFileSync(`/proc/${pid}/stat`, 'utf8').split(') ')[1]?.split(' ') ?? [];
  return (Number(fields[11]) + Number(fields[12])) * millisecondsPerTick;
}

export function send(port: number, shot: Shot): Promise<{ status: number; milliseconds: number; body: string }> {
  const began = performance.now();
  return new Promise((resolve, reject) => {
    const request = http.request(
      { agent, host: '127.0.0.1', port, path: shot.path, method: shot.method, headers: shot.headers },
      (response) => {
        let body = '';
        response.on('data', (chunk) => {
          body += chunk;
        });
        response.on('end', () =>
          resolve({ status: response.statusCode ?? 0, milliseconds: performance.now() - began, body }),
        );
      },
    );
    request.on('error', reject);
    request.end(shot.body);
  });
}

/** Sends `count` shots over `clients` connections and answers the server's processor time per request. */
export async function cpuPerRequest(
  target: { port: number; pid: number },
  load: { shots: (n: number) => Shot; count: number; clients: number },
): Promise<number> {
  const before = cpuMilliseconds(target.pid);
  let sent = 0;
  const client = async () => {
    while (sent < load.count) {
      sent += 1;
      const answer = await send(target.port, load.shots(sent));
      if (answer.status !== 200) throw new Error(`a request answered ${answer.status}: ${answer.body.slice(0, 300)}`);
    }
  };
  await Promise.all(Array.from({ length: load.clients }, client));
  return (cpuMilliseconds(target.pid) - before) / load.count;
}

export function median(values: readonly number[]): number {
  const sorted = [...values].sort((a, b) => a - b);
  const middle = Math.floor(sorted.length / 2);
  return sorted.length % 2 === 1 ? (sorted[middle] ?? 0) : ((sorted[middle - 1] ?? 0) + (sorted[middle] ?? 0)) / 2;
}
