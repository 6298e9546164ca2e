import { useRef, useState } from 'react';
import { newKey } from '../../api/call.ts';
import { ProblemError } from '../../api/problem.ts';
import { sendFile } from '../../api/send-file.ts';
import { Button } from '../../ui/Button.tsx';

/** A paper kept with a training: sent as soon as it is chosen, put on record with the line. */
export function PaperField({ onSent }: { onSent: (fileId: string) => void }) {
  const input = useRef<HTMLInputElement>(null);
  const [said, setSaid] = useState('No paper yet. A picture or a PDF of up to 15 megabytes.');
  const send = async (file: File | undefined) => {
    if (!file) return;
    setSaid(`Sending ${file.name}…`);
    try {
      const { id } = await sendFile(file, { key: newKey(), onProgress: () => undefined });
      setSaid(`${file.name} is kept with it.`);
      onSent(id);
    } catch (error) {
      if (!(error instanceof ProblemError)) throw error;
      setSaid(error.facts.detail ?? error.message);
    }
  };
  return (
    <div className="row">
      <input
        ref={input}
        type="file"
        hidden
        accept="image/*,application/pdf"
        aria-label="Paper of the training"
        onChange={(event) => void send(event.target.files?.[0])}
      />
      <Button onPress={() => input.current?.click()}>Choose a paper</Button>
      <span className="soft small" aria-live="polite">
        {said}
      </span>
    </div>
  );
}
