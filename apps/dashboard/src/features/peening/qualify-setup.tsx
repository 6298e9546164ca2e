import type { Sent } from '@hubwright/contracts/operation';
import { peeningOperations } from '@hubwright/contracts/peening/operations';
import { useState } from 'react';
import type { ProblemError } from '../../api/problem.ts';
import { Button } from '../../ui/Button.tsx';
import { CommandForm } from '../../ui/CommandForm.tsx';
import { Dialog } from '../../ui/Dialog.tsx';
import { FieldGroup } from '../../ui/FieldGroup.tsx';
import { SignCommand, type Signer } from '../../ui/SignCommand.tsx';
import { TextField } from '../../ui/TextField.tsx';
import { say } from '../../ui/toasts.tsx';
import { type AreaDraft, AreaFields, emptyArea, fittedDraft } from './AreaFields.tsx';
import { type Machine, stripsFrom } from './peening.ts';

type Area = Sent<typeof peeningOperations.qualifySetup>['areas'][number];

function areaInput(draft: AreaDraft): Area {
  const { strips, key: _key, ...rest } = draft;
  return { ...rest, strips: stripsFrom(strips) ?? [] } as Area;
}

/** Parameters as lines of name, value and unit, parted by commas. */
function parametersFrom(text: string) {
  return text
    .split('\n')
    .map((line) => line.split(',').map((part) => part.trim()))
    .filter(([name]) => name)
    .map(([name = '', value = '', unit = '']) => ({ name, value, unit }));
}

/** A program qualified area by area: strips over time go in, the curve is drawn while they do, and an inspector signs what it says. */
export function QualifySetup({ machine, signer, onClose }: { machine: Machine; signer: Signer; onClose: () => void }) {
  const [program, setProgram] = useState('');
  const [mediaSize, setMediaSize] = useState('');
  const [mediaLot, setMediaLot] = useState('');
  const [parameters, setParameters] = useState('');
  const [areas, setAreas] = useState<readonly AreaDraft[]>([emptyArea(1)]);
  const [isSigning, setSigning] = useState(false);
  const [problem, setProblem] = useState<ProblemError | null>(null);
  const facts = { program, mediaSize, mediaLot, parameters: parametersFrom(parameters) };
  if (isSigning)
    return (
      <SignCommand
        op={peeningOperations.qualifySetup}
        input={{ machineId: machine.id, ...facts, areas: areas.map(areaInput) }}
        version={machine.version}
        signer={signer}
        onClose={() => setSigning(false)}
        onWrongInput={(wrong) => {
          setProblem(wrong);
          setSigning(false);
        }}
        onSigned={() => {
          say(`${machine.code} is qualified for ${program}.`);
          onClose();
        }}
      >
        <p>
          {machine.code}, {program}, {mediaSize}, media lot {mediaLot}
        </p>
        <ul className="lines">
          {areas.map((area) => (
            <li key={area.name}>
              <span>{area.name}</span>
              <span>{fittedDraft(area)?.words ?? 'no curve'}</span>
            </li>
          ))}
        </ul>
      </SignCommand>
    );
  return (
    <Dialog title={`Qualify a program of ${machine.code}`} isOpen onClose={onClose} width="wide">
      <CommandForm
        problem={problem}
        isPending={false}
        submit="Go on to sign"
        onCancel={onClose}
        onSubmit={() => areas.every((area) => fittedDraft(area)) && setSigning(true)}
      >
        <FieldGroup title="Program and media">
          <TextField name="program" label="Program" value={program} onChange={setProgram} isRequired />
          <TextField name="mediaSize" label="Media size" value={mediaSize} onChange={setMediaSize} isRequired />
          <TextField name="mediaLot" label="Media lot" value={mediaLot} onChange={setMediaLot} isRequired />
        </FieldGroup>
        <TextField
          name="parameters"
          label="Set-up"
          hint="A line each: name, value, unit"
          lines={4}
          value={parameters}
          onChange={setParameters}
        />
        {areas.map((area, index) => (
          <AreaFields
            key={area.key}
            at={index}
            draft={area}
            onChange={(changed) => setAreas(areas.map((one, place) => (place === index ? changed : one)))}
          />
        ))}
        <div className="row">
          <Button onPress={() => setAreas([...areas, emptyArea(areas.length + 1)])}>Add an area</Button>
        </div>
      </CommandForm>
    </Dialog>
  );
}
