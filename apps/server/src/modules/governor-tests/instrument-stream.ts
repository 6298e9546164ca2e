import { connect, type Socket } from 'node:net';
import { LineSplitter } from './line-splitter.ts';
import { readLine, type StreamReading } from './stream-line.ts';

/** The newest reading of a channel and when it came, on the server's own clock. */
export interface Arrived extends StreamReading {
  readonly cameAt: number;
}
export interface StreamView {
  readonly state: 'connecting' | 'connected' | 'waiting';
  readonly trouble: string | null;
  readonly channels: readonly Arrived[];
  readonly refused: number;
  readonly lastRefused: string | null;
}

/** Milliseconds; common practice, no source. */
const times = { connect: 3_000, silence: 10_000, firstWait: 250, longestWait: 8_000, breath: 50 };
const mostChannels = 64;
/** Lines taken at once before the sender has to wait a breath: a flood neither fills memory nor starves other work. */
const atOnce = 200;

/**
 * Reads JSON lines from an instrument and keeps the newest reading of each channel; see `link-operations.ts` of the contracts for
 * the format. Comes back by itself after a disconnect, later each time. Nothing is ever sent.
 */
export class InstrumentStream {
  private socket: Socket | undefined;
  private timer: NodeJS.Timeout | undefined;
  private splitter = new LineSplitter();
  private readonly newest = new Map<string, Arrived>();
  private state: StreamView['state'] = 'connecting';
  private trouble: string | null = null;
  private refused = 0;
  private lastRefused: string | null = null;
  private wait = times.firstWait;
  private isEnded = false;

  constructor(
    readonly host: string,
    readonly port: number,
    private readonly now: () => number = () => performance.now(),
  ) {
    this.connect();
  }

  view(): StreamView {
    const { state, trouble, refused, lastRefused } = this;
    return { state, trouble, refused, lastRefused, channels: [...this.newest.values()] };
  }

  /** For good. */
  end(): void {
    this.isEnded = true;
    clearTimeout(this.timer);
    this.socket?.destroy();
  }

  private connect(): void {
    this.state = 'connecting';
    this.splitter = new LineSplitter();
    [this.refused, this.lastRefused] = [0, null];
    const socket = connect({ host: this.host, port: this.port, timeout: times.connect });
    this.socket = socket;
    socket.on('connect', () => {
      this.state = 'connected';
      this.trouble = null;
      socket.setTimeout(times.silence);
    });
    socket.on('data', (bytes: Buffer) => this.take(socket, bytes));
    socket.on('timeout', () => {
      const silent = this.state === 'connected' ? 'nothing came for ten seconds' : 'it does not answer';
      socket.destroy(new Error(silent));
    });
    socket.on('error', (error: NodeJS.ErrnoException) => {
      this.trouble = error.code === 'ECONNREFUSED' ? 'nothing listens at its address' : error.message;
    });
    socket.on('close', () => this.comeBack());
  }

  private comeBack(): void {
    if (this.isEnded) return;
    this.state = 'waiting';
    this.trouble ??= 'the connection was closed';
    this.timer = setTimeout(() => this.connect(), this.wait);
    this.timer.unref();
    this.wait = Math.min(times.longestWait, this.wait * 2);
  }

  private take(socket: Socket, bytes: Buffer): void {
    const lines = this.splitter.push(bytes);
    for (const line of lines) this.takeLine(line);
    if (lines.length <= atOnce) return;
    socket.pause();
    setTimeout(() => socket.resume(), times.breath).unref();
  }

  private takeLine(line: string | null): void {
    if (line?.trim() === '') return;
    const read = line === null ? 'a line is longer than 1,024 bytes' : readLine(line);
    const why = typeof read === 'string' ? read : this.faultOf(read);
    if (why !== undefined) {
      this.refused += 1;
      this.lastRefused = why;
    } else if (typeof read !== 'string') {
      this.newest.set(read.channel, { ...read, cameAt: this.now() });
      this.wait = times.firstWait;
    }
  }

  private faultOf({ channel, at }: StreamReading): string | undefined {
    const before = this.newest.get(channel);
    if (before && at <= before.at) return `${channel} is not newer than what came before`;
    if (!before && this.newest.size >= mostChannels) return `there are more than ${mostChannels} channels`;
    return undefined;
  }
}
