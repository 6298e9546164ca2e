import { type ChildProcess, fork } from 'node:child_process';
import { existsSync } from 'node:fs';
import { fileURLToPath } from 'node:url';

/** What goes to the process and what comes back. */
export interface Asked<Input> {
  readonly url: string;
  readonly input: Input;
}
export type Answer<Output> = { readonly output: Output } | { readonly fault: string };

/** Kept while nothing is asked, so that a run of many jobs starts it once. */
const idleMilliseconds = 30_000;

/**
 * A long computation over the database in a process of its own: what it reads never stands in the server's memory, and its own is bounded.
 * `name` is its file without ending, as for a `WorkerThread`. One job at a time; it ends when idle, and with the server, whatever ends that.
 */
export class WorkerProcess<Input, Output> {
  private child: ChildProcess | undefined;
  private idle: NodeJS.Timeout | undefined;

  constructor(
    private readonly file: { readonly name: string; readonly beside: string },
    private readonly options: { readonly url: string; readonly megabytes: number },
  ) {}

  /** @throws Error with what the job said, or that its process ended before it answered */
  async run(input: Input): Promise<Output> {
    clearTimeout(this.idle);
    this.child ??= this.open();
    const answer = await this.answer(this.child, { url: this.options.url, input });
    this.idle = setTimeout(() => this.close(), idleMilliseconds);
    this.idle.unref();
    if ('fault' in answer) throw new Error(answer.fault);
    return answer.output;
  }

  close(): void {
    clearTimeout(this.idle);
    this.child?.kill();
    this.child = undefined;
  }

  private answer(child: ChildProcess, asked: Asked<Input>): Promise<Answer<Output>> {
    return new Promise((resolve) => {
      const ended = () => {
        this.child = undefined;
        resolve({ fault: 'its process ended before it answered' });
      };
      child.once('exit', ended);
      child.once('message', (answer: Answer<Output>) => {
        child.off('exit', ended);
        resolve(answer);
      });
      // Where it has gone already, `exit` answers.
      child.send(asked, () => undefined);
    });
  }

  private open(): ChildProcess {
    const { name, beside } = this.file;
    const bundled = new URL(`./${name}.worker.js`, beside);
    const isBundled = existsSync(bundled);
    const child = fork(fileURLToPath(isBundled ? bundled : new URL(`./${name}.worker.ts`, beside)), {
      // Small new space: what a batch leaves behind is gone with the next one and never grows old.
      execArgv: [
        ...[`--max-old-space-size=${this.options.megabytes}`, '--max-semi-space-size=4'],
        ...(isBundled ? [] : ['--import', 'tsx']),
      ],
      env: {
        ...process.env,
        ...(isBundled ? {} : { TSX_TSCONFIG_PATH: fileURLToPath(new URL('../../../tsconfig.json', import.meta.url)) }),
      },
    });
    child.on('error', () => undefined);
    child.unref();
    return child;
  }
}
