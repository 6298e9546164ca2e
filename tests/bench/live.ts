import { readFileSync } from 'node:fs';
import http from 'node:http';
import { type Shot, send } from './load.ts';

const streamCount = 20;
const commandsPerRound = 40;

interface Target {
  readonly port: number;
  readonly pid: number;
}

/** One dashboard's open stream; `next` answers when the next event that names the subject has come. */
class Stream {
  private waiting: { subject: string; came: (at: number) => void } | undefined;
  private text = '';

  static open(port: number, cookie: string): Promise<Stream> {
    const stream = new Stream();
    return new Promise((resolve, reject) => {
      const request = http.get({ agent: false, host: '127.0.0.1', port, path: '/api/live', headers: { cookie } });
      request.on('error', reject);
      request.on('response', (response) => {
        response.setEncoding('utf8').on('data', (text: string) => stream.read(text));
        stream.close = () => request.destroy();
        response.once('data', () => resolve(stream)); // the hello: from here on nothing is missed
        response.on('error', () => undefined);
      });
    });
  }

  close: () => void = () => undefined;

  next(subject: string): Promise<number> {
    return new Promise((came) => {
      this.text = '';
      this.waiting = { subject, came };
    });
  }

  private read(text: string): void {
    this.text += text;
    if (!this.waiting || !this.text.includes(this.waiting.subject)) return;
    this.waiting.came(performance.now());
    this.waiting = undefined;
  }
}

/** From a command's reply to its event, on every one of 20 open streams: real time, since that is what a person waits. */
export async function liveRows(
  { port, pid }: Target,
  load: { cookie: string; rounds: number; command: (n: number) => { shot: Shot; subject: string } },
): Promise<string[][]> {
  const streams = await Promise.all(Array.from({ length: streamCount }, () => Stream.open(port, load.cookie)));
  const waited: number[] = [];
  for (let n = 0; n < load.rounds * commandsPerRound; n += 1) {
    const { shot, subject } = load.command(n);
    const events = streams.map((stream) => stream.next(subject));
    const answer = await send(port, shot);
    const replied = performance.now();
    if (answer.status !== 200) throw new Error(`a command answered ${answer.status}: ${answer.body.slice(0, 300)}`);
    for (const at of await Promise.all(events)) waited.push(Math.max(0, at - replied));
  }
  const memory = residentMegabytes(pid);
  for (const stream of streams) stream.close();
  waited.sort((a, b) => a - b);
  const at = (share: number) => `${(waited[Math.ceil(share * waited.length) - 1] ?? 0).toFixed(0)} ms`;
  return [
    [
      `live event p95 over ${streamCount} streams`,
      at(0.95),
      '≤ 1 s',
      '–',
      `p50 ${at(0.5)}, most ${at(1)}`,
      `${waited.length} events`,
    ],
    [
      'server resident memory after these rows',
      `${memory} MB`,
      '≤ 350 MB',
      '–',
      '–',
      `${streamCount} streams open, one signed-in person`,
    ],
  ];
}

/** What the process holds in memory, from Linux. */
function residentMegabytes(pid: number): number {
  const kilobytes = /^VmRSS:\s+(\d+) kB/m.exec(readFileSync(`/proc/${pid}/status`, 'utf8'))?.[1];
  return Math.round(Number(kilobytes) / 1024);
}
