import { governorOperations } from '@hubwright/contracts/governor-tests/operations';
import { useState } from 'react';
import type { ProblemError } from '../../api/problem.ts';
import { Button } from '../../ui/Button.tsx';
import { CommandForm } from '../../ui/CommandForm.tsx';
import { DecimalField } from '../../ui/DecimalField.tsx';
import { Dialog } from '../../ui/Dialog.tsx';
import { FieldGroup } from '../../ui/FieldGroup.tsx';
import { Select } from '../../ui/Select.tsx';
import { SignCommand, type Signer } from '../../ui/SignCommand.tsx';
import { TextField } from '../../ui/TextField.tsx';
import { say } from '../../ui/toasts.tsx';
import { PointFields } from './PointFields.tsx';
import { emptyDraft, emptyPoint, type ProgramDraft, programInput } from './program-draft.ts';

export interface ModelChoice {
  readonly designation: string;
  readonly revision: { readonly id: string; readonly revision: string };
  readonly applications: readonly { readonly value: string; readonly text: string }[];
}
type SetField = <K extends keyof ProgramDraft>(key: K) => (value: ProgramDraft[K]) => void;

function DriveAndOil({ draft, set }: { draft: ProgramDraft; set: SetField }) {
  return (
    <FieldGroup title="Drive and oil">
      <Select
        name="rotation"
        label="Rotation"
        value={draft.rotation}
        onChange={set('rotation')}
        isRequired
        choices={(['clockwise', 'counter-clockwise'] as const).map((value) => ({ value, text: value }))}
      />
      <DecimalField
        name="driveRatio"
        label="Drive ratio"
        hint="Governor to engine"
        value={draft.driveRatio}
        onChange={set('driveRatio')}
        isRequired
      />
      <TextField name="oil/kind" label="Test oil" value={draft.oilKind} onChange={set('oilKind')} isRequired />
      <DecimalField name="oil/low" label="Oil from" value={draft.oilLow} onChange={set('oilLow')} isRequired />
      <DecimalField name="oil/high" label="Oil to" value={draft.oilHigh} onChange={set('oilHigh')} isRequired />
      <Select
        name="oil/unit"
        label="In"
        value={draft.oilUnit}
        onChange={set('oilUnit')}
        isRequired
        choices={[
          { value: 'degF', text: '°F' },
          { value: 'degC', text: '°C' },
        ]}
      />
      <TextField name="oil/channel" label="Channel of the oil" value={draft.oilChannel} onChange={set('oilChannel')} />
    </FieldGroup>
  );
}

/** A program for one application from the current revision: typed whole, then signed by the inspector who compared it. */
export function IssueProgram(props: {
  model: ModelChoice;
  from: ProgramDraft | undefined;
  signer: Signer;
  onClose: () => void;
}) {
  const { model } = props;
  const [draft, setDraft] = useState<ProgramDraft>(props.from ?? emptyDraft);
  const [isSigning, setSigning] = useState(false);
  const [problem, setProblem] = useState<ProblemError | null>(null);
  const set: SetField = (key) => (value) => setDraft({ ...draft, [key]: value });
  const application = model.applications.find(({ value }) => value === draft.applicationId)?.text;
  if (isSigning)
    return (
      <SignCommand
        op={governorOperations.issueGovernorProgram}
        input={programInput(draft, model.revision.id)}
        signer={props.signer}
        onClose={() => setSigning(false)}
        onWrongInput={(wrong) => {
          setProblem(wrong);
          setSigning(false);
        }}
        onSigned={({ issue }) => {
          say(`${model.designation} for ${application}: issue ${issue} is current.`);
          props.onClose();
        }}
      >
        <p>
          {model.designation}, {application}, revision {model.revision.revision}: {draft.points.length} points
        </p>
      </SignCommand>
    );
  return (
    <Dialog title={`Program of ${model.designation}`} isOpen onClose={props.onClose} width="wide">
      <CommandForm
        problem={problem}
        isPending={false}
        submit="Go on to sign"
        onCancel={props.onClose}
        onSubmit={() => setSigning(true)}
      >
        <FieldGroup title={`By revision ${model.revision.revision}`}>
          <Select
            name="applicationId"
            label="Application"
            value={draft.applicationId}
            onChange={set('applicationId')}
            choices={model.applications}
            isRequired
          />
          <TextField
            name="basis"
            label="Where the figures come from"
            hint="Table or paragraph of the manual"
            value={draft.basis}
            onChange={set('basis')}
            isRequired
          />
        </FieldGroup>
        <DriveAndOil draft={draft} set={set} />
        {draft.points.map((point, index) => (
          <PointFields
            key={point.key}
            at={index}
            draft={point}
            onChange={(changed) => set('points')(draft.points.map((one, place) => (place === index ? changed : one)))}
          />
        ))}
        <div className="row">
          <Button onPress={() => set('points')([...draft.points, emptyPoint(draft.points.length + 1)])}>
            Add a point
          </Button>
        </div>
        <TextField
          name="adjustments"
          label="What may be adjusted"
          hint="A line each: what, a colon, the points to take again parted by commas"
          lines={4}
          value={draft.adjustments}
          onChange={set('adjustments')}
        />
      </CommandForm>
    </Dialog>
  );
}
