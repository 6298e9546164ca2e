import { peeningOperations } from '@hubwright/contracts/peening/operations';
import { useState } from 'react';
import type { ProblemError } from '../../api/problem.ts';
import { Caution } from '../../ui/Caution.tsx';
import { Checkbox, CheckboxList } from '../../ui/Checkbox.tsx';
import { CommandForm } from '../../ui/CommandForm.tsx';
import { DecimalField } from '../../ui/DecimalField.tsx';
import { Dialog } from '../../ui/Dialog.tsx';
import { Select } from '../../ui/Select.tsx';
import { SignCommand, type Signer } from '../../ui/SignCommand.tsx';
import { say } from '../../ui/toasts.tsx';
import type { Machine, Waiting } from './peening.ts';
import { areRead, netWords, noStrips, readingsOf, StripFields } from './StripFields.tsx';

/** Programs that a lot may begin with: the newest of each, whose strips have not failed since, with media whose check holds. */
function programsOf(machines: readonly Machine[]) {
  return machines.flatMap(({ code, inService, media, setups }) =>
    setups
      .filter(({ isCurrent, failedLot }) => inService && isCurrent && failedLot === null && media?.state === 'good')
      .map(({ id, program }) => ({ value: id, text: `${code}, ${program}, ${media?.size} ${media?.code}` })),
  );
}

/** A lot begins with what waits for the same peening, nozzles and media looked at, and a good strip for each area. */
export function StartLot(props: {
  waiting: readonly Waiting[];
  machines: readonly Machine[];
  signer: Signer;
  onClose: () => void;
}) {
  const free = props.waiting.filter(({ blocked }) => blocked === null);
  const [setupId, setSetup] = useState<string | null>(null);
  const [stepIds, setSteps] = useState<readonly string[]>([]);
  const [strips, setStrips] = useState(noStrips);
  const [meterHours, setMeterHours] = useState('');
  const [checked, setChecked] = useState({ nozzles: false, media: false });
  const [isSigning, setSigning] = useState(false);
  const [problem, setProblem] = useState<ProblemError | null>(null);
  const spec = free.find(({ stepId }) => stepIds.includes(stepId))?.spec;
  const media = props.machines.find(({ setups }) => setups.some(({ id }) => id === setupId))?.media;
  const chosen = free.filter(({ stepId }) => stepIds.includes(stepId));
  if (isSigning && spec && setupId)
    return (
      <SignCommand
        op={peeningOperations.startPeeningLot}
        input={{
          ...{ setupId, stepIds: [...stepIds], opening: readingsOf(spec, strips) },
          ...(media?.everyHours ? { meterHours } : {}),
          ...{ nozzlesChecked: checked.nozzles as true, mediaChecked: checked.media as true },
        }}
        signer={props.signer}
        process="shot-peening"
        onClose={() => setSigning(false)}
        onWrongInput={(wrong) => {
          setProblem(wrong);
          setSigning(false);
        }}
        onSigned={({ number }) => {
          say(`${number} is begun.`);
          props.onClose();
        }}
      >
        <p>{chosen.map(({ workOrderNumber, position }) => `${workOrderNumber} ${position}`).join(', ')}</p>
        <p>{netWords(spec, strips)}</p>
      </SignCommand>
    );
  return (
    <Dialog title="Begin a peening lot" isOpen onClose={props.onClose} width="wide">
      <CommandForm
        problem={problem}
        isPending={false}
        submit="Go on to sign"
        onCancel={props.onClose}
        onSubmit={() =>
          spec && areRead(spec, strips) && setupId && checked.nozzles && checked.media && setSigning(true)
        }
      >
        <Caution>Shot at peening speed injures: cabinet closed and interlock working before the air is on.</Caution>
        <CheckboxList
          name="stepIds"
          label="Parts of one specification"
          value={stepIds}
          onChange={setSteps}
          choices={free.map(({ stepId, workOrderNumber, position, serial }) => ({
            value: stepId,
            text: `${workOrderNumber} ${position}, ${serial}`,
          }))}
          isRequired
        />
        <Select
          name="setupId"
          label="Machine and program"
          value={setupId}
          onChange={setSetup}
          choices={programsOf(props.machines)}
          isRequired
        />
        {programsOf(props.machines).length === 0 ? (
          <p className="soft">
            No machine is ready: its program must be qualified, and the check of its media must hold.
          </p>
        ) : null}
        {media?.everyHours ? (
          <DecimalField
            name="meterHours"
            label="Machine’s counter"
            hint={`Its media is checked every ${media.everyHours} hours`}
            unit="h"
            decimals={1}
            value={meterHours}
            onChange={setMeterHours}
            isRequired
          />
        ) : null}
        {spec ? <StripFields spec={spec} name="opening" strips={strips} onChange={setStrips} /> : null}
        <Checkbox isSelected={checked.nozzles} onChange={(nozzles) => setChecked({ ...checked, nozzles })}>
          Nozzles looked at: wear within the limit
        </Checkbox>
        <Checkbox isSelected={checked.media} onChange={(media) => setChecked({ ...checked, media })}>
          Media looked at: size and shape as specified
        </Checkbox>
      </CommandForm>
    </Dialog>
  );
}
