import { governorOperations } from '@hubwright/contracts/governor-tests/operations';
import { useState } from 'react';
import { useCommand } from '../../api/command.ts';
import { Caution } from '../../ui/Caution.tsx';
import { Checkbox } from '../../ui/Checkbox.tsx';
import { CommandForm } from '../../ui/CommandForm.tsx';
import { Dialog } from '../../ui/Dialog.tsx';
import { SupervisorFields, useSupervision } from '../../ui/SupervisorFields.tsx';
import { TextField } from '../../ui/TextField.tsx';
import { AcceptanceNote } from './AcceptanceNote.tsx';
import { BenchField } from './BenchField.tsx';
import { type Program, unitWord, type Waiting } from './governor.ts';

const looks = {
  rotationChecked: 'The drive turns the way the program says',
  guardClosed: 'The guard of the drive is closed',
  hosesRated: 'Hoses and fittings are rated for the pressure',
  stopWithinReach: 'The stop of the drive is within reach',
} as const;
type Look = keyof typeof looks;

/** A run begins by the program of the application, on a bench that was looked at first. */
export function BeginRun(props: {
  waiting: Waiting;
  program: Program;
  onBegun: (runId: string) => void;
  onClose: () => void;
}) {
  const { waiting, program } = props;
  const command = useCommand(governorOperations.beginGovernorRun);
  const [instrumentId, setInstrument] = useState<string | null>(null);
  const supervision = useSupervision('governor-bench');
  const [oil, setOil] = useState('');
  const [seen, setSeen] = useState<Readonly<Partial<Record<Look, boolean>>>>({});
  const { rotation, driveRatio, oil: asked } = program.content;
  const all = Object.fromEntries(Object.keys(looks).map((look) => [look, seen[look as Look] ?? false]));
  return (
    <Dialog title={`${waiting.workOrderNumber}: run on the bench`} isOpen onClose={props.onClose} width="wide">
      <CommandForm
        problem={command.error}
        isPending={command.isPending || supervision.isAsking}
        submit="Begin the run"
        onCancel={props.onClose}
        onSubmit={() => {
          const beside = supervision.given();
          supervision.forget();
          command.mutate(
            {
              input: {
                ...{ stepId: waiting.stepId, programId: program.id, instrumentId: instrumentId ?? '', oil },
                ...(all as Record<Look, true>),
                ...beside,
              },
            },
            { onSuccess: ({ id }) => props.onBegun(id) },
          );
        }}
      >
        <Caution>
          Hot oil under pressure and a turning drive injure. Follow the current approved manual; hands off while it
          turns.
        </Caution>
        <dl className="facts">
          <div>
            <dt>Application</dt>
            <dd>{waiting.application}</dd>
          </div>
          <div>
            <dt>Program</dt>
            <dd>
              {program.revision.manual} revision {program.revision.revision}, issue {program.issue}
            </dd>
          </div>
          <div>
            <dt>Rotation</dt>
            <dd>{rotation}</dd>
          </div>
          <div>
            <dt>Drive ratio</dt>
            <dd>{driveRatio} governor to engine</dd>
          </div>
          <div>
            <dt>Oil</dt>
            <dd>
              {asked.kind}, {asked.low} to {asked.high} {unitWord(asked.unit)}
            </dd>
          </div>
        </dl>
        <BenchField value={instrumentId} onChange={setInstrument} />
        <AcceptanceNote program={program} instrumentId={instrumentId} />
        <TextField name="oil" label="Oil in the bench, name and lot" value={oil} onChange={setOil} isRequired />
        {Object.entries(looks).map(([look, text]) => (
          <Checkbox
            key={look}
            isSelected={seen[look as Look] ?? false}
            onChange={(isSeen) => setSeen({ ...seen, [look]: isSeen })}
          >
            {text}
          </Checkbox>
        ))}
        {supervision.isNeeded ? <SupervisorFields of={supervision} /> : null}
      </CommandForm>
    </Dialog>
  );
}
