import type { CycleMeter, HourMeter } from '@hubwright/contracts/customers/operations';
import { aircraftPositions, intervalOperations } from '@hubwright/contracts/units/interval-operations';
import { unitOperations } from '@hubwright/contracts/units/operations';
import { useState } from 'react';
import { useCommand } from '../../api/command.ts';
import { queryFor } from '../../api/query.ts';
import { hourMeterChoices } from '../../format/meter-words.tsx';
import { CommandForm } from '../../ui/CommandForm.tsx';
import { DateField } from '../../ui/DateField.tsx';
import { DecimalField } from '../../ui/DecimalField.tsx';
import { Dialog } from '../../ui/Dialog.tsx';
import { type Found, SearchBox } from '../../ui/SearchBox.tsx';
import { Select } from '../../ui/Select.tsx';
import { TextField } from '../../ui/TextField.tsx';
import { say } from '../../ui/toasts.tsx';
import { Cycles, cyclesIn, wholeText } from './interval-cycles.tsx';
import { type Interval, leftEmpty, tenthsOf } from './times-as-of.ts';

type Position = (typeof aircraftPositions)[number];
const positionChoices = aircraftPositions.map((value) => ({ value, text: value }));
function textOf(tenths: number | 'unknown' | null): string {
  return typeof tenths === 'number' ? (tenths / 10).toFixed(1) : '';
}

function draftOf(was: Interval | undefined) {
  return {
    from: was?.from ?? '',
    fromTenths: textOf(was?.fromTenths ?? null),
    to: was?.to ?? '',
    toTenths: textOf(was?.toTenths ?? null),
    fromCycles: wholeText(was?.cycles?.from ?? null),
    toCycles: wholeText(was?.cycles?.to ?? null),
    why: '',
  };
}

/** An installation on an aircraft as it is told to us, or as it really was; what was recorded before stays on record. */
export function ReportInstalled({ itemId, was, onClose }: { itemId: string; was?: Interval; onClose: () => void }) {
  const report = useCommand(intervalOperations.reportInstalled);
  const correct = useCommand(intervalOperations.correctInterval);
  const [aircraft, setAircraft] = useState<Found | null>(
    was ? { id: was.aircraft.id, name: was.aircraft.registration, detail: '' } : null,
  );
  const [position, setPosition] = useState<Position | null>(was?.position ?? null);
  const [meter, setMeter] = useState<HourMeter | null>((was?.meter as HourMeter | undefined) ?? null);
  const [counter, setCounter] = useState<CycleMeter | null>(was?.cycles?.meter ?? null);
  const [draft, setDraft] = useState(draftOf(was));
  const set = (name: keyof typeof draft) => (text: string) => setDraft({ ...draft, [name]: text });
  const send = () => {
    if (!aircraft || !position || !meter) return;
    const { from, fromTenths, to, toTenths, why } = draft;
    const end = to === '' ? {} : { to, toTenths: tenthsOf(toTenths) };
    const stated = {
      aircraftId: aircraft.id,
      position,
      meter,
      from,
      fromTenths: tenthsOf(fromTenths),
      ...end,
      ...cyclesIn(counter, draft),
    };
    const done = {
      onSuccess: () => {
        say(`The installation on ${aircraft.name} is on record.`);
        onClose();
      },
    };
    if (was)
      correct.mutate({ input: { ...stated, intervalId: was.intervalId, supersedesId: was.id, reason: why } }, done);
    else report.mutate({ input: { ...stated, itemId, basis: why } }, done);
  };
  return (
    <Dialog title={was ? 'Correct the installation' : 'Report an installation'} isOpen onClose={onClose} width="wide">
      <CommandForm
        problem={report.error ?? correct.error}
        isPending={report.isPending || correct.isPending}
        submit={was ? 'Record it as it was' : 'Record the installation'}
        onSubmit={send}
        onCancel={onClose}
      >
        <SearchBox
          name="aircraftId"
          label="Aircraft"
          hint="Its registration"
          picked={aircraft}
          onPick={setAircraft}
          search={(text) => queryFor(unitOperations.find, { text: text || '-', limit: 20 })}
          found={({ rows }) =>
            rows.filter(({ kind }) => kind === 'aircraft').map(({ id, title, detail }) => ({ id, name: title, detail }))
          }
          isRequired
        />
        <Select
          name="position"
          label="Position"
          value={position}
          onChange={setPosition}
          choices={positionChoices}
          isRequired
        />
        <Select
          name="meter"
          label="Hours from which meter"
          value={meter}
          onChange={setMeter}
          choices={hourMeterChoices}
          isRequired
        />
        <DateField name="from" label="Installed on" value={draft.from} onChange={set('from')} isRequired />
        <DecimalField
          name="fromTenths"
          label="Meter then"
          hint={leftEmpty}
          unit="h"
          decimals={1}
          value={draft.fromTenths}
          onChange={set('fromTenths')}
        />
        <DateField name="to" label="Removed on, where it is off again" value={draft.to} onChange={set('to')} />
        {draft.to === '' ? null : (
          <DecimalField
            name="toTenths"
            label="Meter at removal"
            hint={leftEmpty}
            unit="h"
            decimals={1}
            value={draft.toTenths}
            onChange={set('toTenths')}
          />
        )}
        <Cycles meter={counter} onMeter={setCounter} draft={draft} set={set} />
        <TextField
          name={was ? 'reason' : 'basis'}
          label={was ? 'Why it was wrong' : 'Who says so, or which log entry'}
          value={draft.why}
          onChange={set('why')}
          isRequired
        />
      </CommandForm>
    </Dialog>
  );
}
