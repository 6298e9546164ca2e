import { processOperations } from '@hubwright/contracts/processes/operations';
import { useState } from 'react';
import { useCommand } from '../../api/command.ts';
import { Checkbox } from '../../ui/Checkbox.tsx';
import { CommandForm } from '../../ui/CommandForm.tsx';
import { TextField } from '../../ui/TextField.tsx';
import { say } from '../../ui/toasts.tsx';
import { CalibrationFields } from './CalibrationFields.tsx';
import type { Instrument } from './instruments.ts';

/** A certificate came back with the instrument: its dates, or that it may not be used any more. */
export function CalibrateForm(props: { instrument: Instrument; onDone: () => void; onCancel: () => void }) {
  const { instrument, onDone } = props;
  const calibrate = useCommand(processOperations.calibrateInstrument);
  const [draft, setDraft] = useState({
    calibratedOn: '',
    calibrationDueOn: '',
    certificate: '',
    inService: true,
  });
  const send = () =>
    calibrate.mutate(
      { input: { instrumentId: instrument.id, ...draft }, version: instrument.version },
      {
        onSuccess: () => {
          say(`${instrument.tag}: the calibration is recorded.`);
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
      <Checkbox isSelected={!draft.inService} onChange={(isOut) => setDraft({ ...draft, inService: !isOut })}>
        Take it out of service: nobody signs with it
      </Checkbox>
    </CommandForm>
  );
}
