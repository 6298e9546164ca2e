import { findingOperations } from '@hubwright/contracts/findings/operations';
import { useState } from 'react';
import { useCommand } from '../../api/command.ts';
import { CommandForm } from '../../ui/CommandForm.tsx';
import { DecimalField } from '../../ui/DecimalField.tsx';
import { Dialog } from '../../ui/Dialog.tsx';
import { TextField } from '../../ui/TextField.tsx';
import { say } from '../../ui/toasts.tsx';
import type { Finding } from './findings.ts';

/** Hours as typed to tenths; an empty entry is unknown, never zero. */
function tenths(hours: string): number | 'unknown' {
  return hours === '' ? 'unknown' : Math.round(Number(hours) * 10);
}

/** Which serialized part takes the place of a rejected one. It keeps its own times. */
export function FitReplacement({ finding, onClose }: { finding: Finding; onClose: () => void }) {
  const fit = useCommand(findingOperations.fitReplacement);
  const [maker, setMaker] = useState('');
  const [partNumber, setPartNumber] = useState('');
  const [serial, setSerial] = useState('');
  const [sinceNew, setSinceNew] = useState('');
  const [sinceOverhaul, setSinceOverhaul] = useState('');
  const [cycles, setCycles] = useState('');
  return (
    <Dialog title={`What takes the place of ${finding.traveler.title}?`} isOpen onClose={onClose}>
      <CommandForm
        problem={fit.error}
        isPending={fit.isPending}
        submit="Record the replacement"
        onCancel={onClose}
        onSubmit={() =>
          fit.mutate(
            {
              input: {
                findingId: finding.id,
                maker,
                partNumber,
                serial,
                sinceNewTenths: tenths(sinceNew),
                sinceOverhaulTenths: tenths(sinceOverhaul),
                sinceNewCycles: cycles === '' ? 'unknown' : Number(cycles),
              },
            },
            {
              onSuccess: () => {
                say(`${serial} takes its place and keeps its own times.`);
                onClose();
              },
            },
          )
        }
      >
        <TextField name="maker" label="Maker" value={maker} onChange={setMaker} isRequired />
        <TextField
          name="partNumber"
          label="Part number"
          isCode
          value={partNumber}
          onChange={setPartNumber}
          isRequired
        />
        <TextField name="serial" label="Serial, as on the part" isCode value={serial} onChange={setSerial} isRequired />
        <DecimalField
          name="sinceNewTenths"
          label="Hours since new"
          hint="Leave empty when unknown"
          unit="h"
          decimals={1}
          value={sinceNew}
          onChange={setSinceNew}
        />
        <DecimalField
          name="sinceOverhaulTenths"
          label="Hours since overhaul"
          hint="Leave empty when unknown"
          unit="h"
          decimals={1}
          value={sinceOverhaul}
          onChange={setSinceOverhaul}
        />
        <DecimalField
          name="sinceNewCycles"
          label="Cycles since new"
          hint="Leave empty when unknown"
          decimals={0}
          value={cycles}
          onChange={setCycles}
        />
      </CommandForm>
    </Dialog>
  );
}
