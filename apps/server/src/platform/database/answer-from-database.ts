import type { Answer, Asked } from '../jobs/worker-process.ts';
import { Database } from './client.ts';
import { KeptResults } from './kept-results.ts';
import { Reads } from './reads.ts';

/** What a job in a process of its own works with. */
export interface WorkerDatabase {
  readonly kept: KeptResults;
  readonly reads: Reads;
}

/** Makes this process one that answers jobs of a `WorkerProcess` with connections of its own, until the server lets go of it. */
export function answerFromDatabase<Input, Output>(
  work: (database: WorkerDatabase, input: Input) => Promise<Output>,
): void {
  let own: WorkerDatabase | undefined;
  const answer = async ({ url, input }: Asked<Input>): Promise<Answer<Output>> => {
    try {
      own ??= connected(url);
      return { output: await work(own, input) };
    } catch (error) {
      return { fault: error instanceof Error ? error.message : String(error) };
    }
  };
  process.on('message', async (asked: Asked<Input>) => void process.send?.(await answer(asked)));
  process.on('disconnect', () => process.exit(0));
}

function connected(url: string): WorkerDatabase {
  const database = new Database(url);
  return { kept: new KeptResults(database), reads: new Reads(database) };
}
