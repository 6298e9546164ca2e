import { governorOperations } from '@hubwright/contracts/governor-tests/operations';
import type { Reply } from '@hubwright/contracts/operation';
import { useState } from 'react';
import { FileTrigger } from 'react-aria-components';
import { call } from '../../api/call.ts';
import { useCommand } from '../../api/command.ts';
import { ProblemError } from '../../api/problem.ts';
import { Button } from '../../ui/Button.tsx';
import { CommandForm } from '../../ui/CommandForm.tsx';
import { Dialog } from '../../ui/Dialog.tsx';
import { StateMark } from '../../ui/StateMark.tsx';
import { TextField } from '../../ui/TextField.tsx';
import { say } from '../../ui/toasts.tsx';
import { pointMarks, type Run, unitWord } from './governor.ts';

type Looked = Reply<typeof governorOperations.importGovernorReadings>;

/** A table of readings, from a file or pasted: looked through first, row by row, then taken over whole or not at all. */
export function ImportReadings({ run, onClose }: { run: Run; onClose: () => void }) {
  const operation = governorOperations.importGovernorReadings;
  const command = useCommand(operation);
  const [csv, setCsv] = useState('');
  const [looked, setLooked] = useState<Looked>();
  const [wrong, setWrong] = useState<ProblemError | null>(null);
  const change = (text: string) => {
    setCsv(text);
    setLooked(undefined);
    setWrong(null);
  };
  const look = () =>
    call(operation, { runId: run.id, csv }, { dryRun: true }).then(setLooked, (error: Error) => {
      if (!(error instanceof ProblemError)) throw error;
      setWrong(error);
    });
  const keep = () =>
    command.mutate(
      { input: { runId: run.id, csv } },
      {
        onSuccess: ({ rows }) => {
          say(`${rows.length} readings are taken over.`);
          onClose();
        },
      },
    );
  return (
    <Dialog title={`Readings from a file, ${run.number}`} isOpen onClose={onClose} width="wide">
      <CommandForm
        problem={wrong ?? command.error}
        isPending={command.isPending}
        submit={looked ? `Take over ${looked.rows.length} readings` : 'Look through it'}
        onCancel={onClose}
        onSubmit={() => (looked ? keep() : void look())}
      >
        <FileTrigger
          acceptedFileTypes={['text/csv', '.csv']}
          onSelect={(files) => void files?.[0]?.text().then(change)}
        >
          <Button>Choose a CSV file</Button>
        </FileTrigger>
        <TextField
          name="csv"
          label="Readings"
          hint="First line: point, value, unit, oil temperature, oil unit"
          lines={8}
          value={csv}
          onChange={change}
          isRequired
        />
        {looked ? (
          <ul className="lines">
            {looked.rows.map(({ line, point, value, unit, pass }) => (
              <li key={line}>
                <span>
                  Line {line}: {point} {value} {unitWord(unit)}
                </span>
                <StateMark {...pointMarks[pass ? 'good' : 'out']} />
              </li>
            ))}
          </ul>
        ) : null}
      </CommandForm>
    </Dialog>
  );
}
