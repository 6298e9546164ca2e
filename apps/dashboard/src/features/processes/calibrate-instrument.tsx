import { processOperations } from '@hubwright/contracts/processes/operations';
import { useState } from 'react';
import { useCommand } from '../../api/command.ts';
import { countOf } from '../../format/numbers.ts';
import { Checkbox } from '../../ui/Checkbox.tsx';
import { CommandForm } from '../../ui/CommandForm.tsx';
import { Select } from '../../ui/Select.tsx';
import { TextField } from '../../ui/TextField.tsx';
import { say } from '../../ui/toasts.tsx';
import { CalibrationFields } from './CalibrationFields.tsx';
import { type DoubtDraft, DoubtFields, doubtInput } from './DoubtFields.tsx';
import type { Instrument } from './instruments.ts';
import { type PointDraft, PointFields } from './PointFields.tsx';

const foundChoices = [
  { value: 'not-said', text: 'The certificate does not say' },
  { value: 'good', text: 'Good' },
  { value: 'out', text: 'Out of tolerance' },
] as const;

/** A certificate came back with the instrument: its dates, or that it may not be used any more. */
export function CalibrateForm(props: { instrument: Instrument; onDone: () => void; onCancel: () => void }) {
  const { instrument, onDone } = props;
  const calibrate = useCommand(processOperations.calibrateInstrument);
  const [draft, setDraft] = useState({
    calibratedOn: '',
    calibrationDueOn: '',
    certificate: '',
    inService: true,
    points: [] as PointDraft[],
    asFound: 'not-said' as 'good' | 'out' | 'not-said',
  });
  const [doubts, setDoubts] = useState<readonly DoubtDraft[]>([{ uncertainty: '', unit: '' }]);
  const { asFound, ...rest } = draft;
  // The readings speak where there are any.
  const input = {
    instrumentId: instrument.id,
    ...rest,
    ...doubtInput(doubts),
    ...(draft.points.length > 0 ? {} : { asFound }),
  };
  const send = () =>
    calibrate.mutate(
      { input, version: instrument.version },
      {
        onSuccess: ({ reviews }) => {
          say(
            reviews > 0
              ? `${instrument.tag} was out of tolerance: ${countOf(reviews, 'sign-off')} made with it wait for an inspector.`
              : `${instrument.tag}: the calibration is recorded.`,
          );
          onDone();
        },
      },
    );
  return (
    <CommandForm
      problem={calibrate.error}
      isPending={calibrate.isPending}
      submit="Record the calibration"
      onSubmit={send}
      onCancel={props.onCancel}
    >
      <CalibrationFields draft={draft} onChange={setDraft} />
      <TextField
        name="certificate"
        label="Certificate"
        value={draft.certificate}
        onChange={(certificate) => setDraft({ ...draft, certificate })}
        isCode
      />
      <DoubtFields doubts={doubts} onChange={setDoubts} />
      <PointFields points={draft.points} onChange={(points) => setDraft({ ...draft, points })} />
      {draft.points.length === 0 ? (
        <Select
          name="asFound"
          label="As found, before anyone adjusted it"
          value={asFound}
          onChange={(found) => setDraft({ ...draft, asFound: found })}
          choices={foundChoices}
          isRequired
        />
      ) : null}
      <Checkbox isSelected={!draft.inService} onChange={(isOut) => setDraft({ ...draft, inService: !isOut })}>
        Take it out of service: nobody signs with it
      </Checkbox>
    </CommandForm>
  );
}
