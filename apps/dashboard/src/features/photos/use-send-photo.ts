import { useQueryClient } from '@tanstack/react-query';
import { useRef, useState } from 'react';
import { newKey } from '../../api/call.ts';
import { ProblemError, problemFrom } from '../../api/problem.ts';
import { sendFile } from '../../api/send-file.ts';
import { addOperations, addTo, type Said, type Shown } from './photos.ts';

/**
 * Sends a file, then says what it shows. Each half has a key of its own that stays until it was answered yes, so trying again
 * after a lost network never does a thing twice, and a file that arrived is not sent again.
 */
export function useSendPhoto(shown: Shown, file: File) {
  const queries = useQueryClient();
  const keys = useRef({ send: newKey(), add: newKey() });
  const fileId = useRef<string>(undefined);
  const [share, setShare] = useState(0);
  const [isPending, setPending] = useState(false);
  const [problem, setProblem] = useState<ProblemError | null>(null);

  async function once(said: Omit<Said, 'fileId'>): Promise<void> {
    fileId.current ??= (await sendFile(file, { key: keys.current.send, onProgress: setShare })).id;
    await addTo(shown, { fileId: fileId.current, ...said }, keys.current.add);
    const { touches } = addOperations[shown.kind];
    await Promise.all(touches.map((noun) => queries.invalidateQueries({ queryKey: [noun] })));
  }

  async function send(said: Omit<Said, 'fileId'>, onDone: () => void): Promise<void> {
    setPending(true);
    setProblem(null);
    try {
      refuseUnsaid(shown, said.title);
      await withPatience(() => once(said));
      onDone();
    } catch (error) {
      if (!(error instanceof ProblemError)) throw error;
      // It waited too long, or the words were changed after they were sent: a new intention.
      if (error.type === 'upload-gone') fileId.current = undefined;
      if (error.type === 'upload-gone' || error.type === 'key-reused') keys.current = { send: newKey(), add: newKey() };
      setProblem(error);
    } finally {
      setPending(false);
    }
  }
  return { send, share, isPending, problem };
}

/** A server that did not answer is asked twice more, as every other command does. */
async function withPatience(work: () => Promise<void>): Promise<void> {
  for (let tries = 0; ; tries += 1) {
    try {
      return await work();
    } catch (error) {
      if (!(error instanceof ProblemError && error.mayRepeat) || tries === 2) throw error;
      await new Promise((resolve) => setTimeout(resolve, 500 * 2 ** tries));
    }
  }
}

/** Asked for before anything is sent: a tablet's network is slow. */
function refuseUnsaid({ kind }: Shown, title: string): void {
  const { error } = addOperations[kind].input.shape.title.safeParse(title);
  const errors = error?.issues.map(({ message }) => ({ pointer: '/title', detail: message }));
  if (errors) throw problemFrom(422, { type: '/problems/invalid-input', detail: 'Nothing was sent yet.', errors });
}
