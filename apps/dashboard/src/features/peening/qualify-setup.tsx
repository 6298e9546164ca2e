import type { Sent } from '@hubwright/contracts/operation';
import { peeningOperations } from '@hubwright/contracts/peening/operations';
import { useState } from 'react';
import type { ProblemError } from '../../api/problem.ts';
import { Button } from '../../ui/Button.tsx';
import { CommandForm } from '../../ui/CommandForm.tsx';
import { Dialog } from '../../ui/Dialog.tsx';
import { FieldGroup } from '../../ui/FieldGroup.tsx';
import { SignCommand, type Signer } from '../../ui/SignCommand.tsx';
import { StateMark } from '../../ui/StateMark.tsx';
import { TextField } from '../../ui/TextField.tsx';
import { say } from '../../ui/toasts.tsx';
import { type AreaDraft, AreaFields, emptyArea, fittedDraft } from './AreaFields.tsx';
import { namedParameters, ParameterFields, parametersIn } from './ParameterFields.tsx';
import { type Machine, mediaMarks, stripsFrom } from './peening.ts';

type Area = Sent<typeof peeningOperations.qualifySetup>['areas'][number];

function areaInput(draft: AreaDraft): Area {
  const { strips, key: _key, ...rest } = draft;
  return { ...rest, strips: stripsFrom(strips) ?? [] } as Area;
}

/** A program qualified area by area: strips over time go in, the curve is drawn while they do, and an inspector signs what it says. */
export function QualifySetup({ machine, signer, onClose }: { machine: Machine; signer: Signer; onClose: () => void }) {
  const [program, setProgram] = useState('');
  const [parameters, setParameters] = useState(namedParameters);
  const [areas, setAreas] = useState<readonly AreaDraft[]>([emptyArea(1)]);
  const [isSigning, setSigning] = useState(false);
  const [problem, setProblem] = useState<ProblemError | null>(null);
  const facts = { program, parameters: parametersIn(parameters) };
  const { media } = machine;
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
          {machine.code}, {program}, {media?.size}, media lot {media?.code}
        </p>
        <p className="small">
          {facts.parameters.map(({ name, value, unit }) => `${name} ${value} ${unit}`.trim()).join(', ')}
        </p>
        <ul className="lines">
          {areas.map((area) => (
            <li key={area.name}>
              <span>{area.name}</span>
              <span className="stack tight">
                {fittedDraft(area)?.words ?? 'no curve'}
                {fittedDraft(area)?.area.warnings.map((warning) => (
                  <StateMark key={warning} state="hold" word={warning} />
                ))}
              </span>
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
          <p>
            {media ? `${media.size}, media lot ${media.code} ` : 'No media lot is in this machine. '}
            {media ? <StateMark {...mediaMarks[media.state]} /> : null}
          </p>
        </FieldGroup>
        <ParameterFields parameters={parameters} onChange={setParameters} />
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
