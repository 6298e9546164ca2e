import { existsSync } from 'node:fs';
import { Piscina } from 'piscina';

/** How a heavy computation is kept from the request thread. */
export interface WorkerOptions {
  /** The most its heap may grow to; a job that needs more fails, the server lives on. */
  readonly megabytes: number;
  /** Jobs that may wait; more answer `busy` to the caller. */
  readonly queue: number;
}

/**
 * A worker thread for one pure function, started when first asked and stopped when idle. `name` is its file without ending:
 * `cover` is `cover.worker.ts` beside the caller, and `cover.worker.js` beside the bundle.
 *
 * @throws whatever the function throws; an error of the pool itself when the memory or the queue ran out
 */
export class WorkerThread<Input, Output> {
  private pool: Piscina<Input, Output> | undefined;

  constructor(
    private readonly file: { readonly name: string; readonly beside: string },
    private readonly options: WorkerOptions,
  ) {}

  run(input: Input): Promise<Output> {
    this.pool ??= this.open();
    return this.pool.run(input);
  }

  async close(): Promise<void> {
    await this.pool?.destroy();
    this.pool = undefined;
  }

  private open(): Piscina<Input, Output> {
    const bundled = new URL(`./${this.file.name}.worker.js`, this.file.beside);
    const isBundled = existsSync(bundled);
    return new Piscina<Input, Output>({
      filename: (isBundled ? bundled : new URL(`./${this.file.name}.worker.ts`, this.file.beside)).href,
      // Run from source (development and tests), the thread needs the loader for TypeScript that the process itself has.
      execArgv: isBundled ? [] : ['--import', 'tsx'],
      minThreads: 0,
      maxThreads: 1,
      idleTimeout: 60_000,
      maxQueue: this.options.queue,
      resourceLimits: { maxOldGenerationSizeMb: this.options.megabytes },
    });
  }
}
