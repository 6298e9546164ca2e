import { useQuery } from '@tanstack/react-query';
import { useEffect, useState } from 'react';
import { hourMeterChoices } from '../../format/meter-words.tsx';
import { Checkbox } from '../../ui/Checkbox.tsx';
import { DecimalField } from '../../ui/DecimalField.tsx';
import { FieldGroup } from '../../ui/FieldGroup.tsx';
import { Select } from '../../ui/Select.tsx';
import { TextField } from '../../ui/TextField.tsx';
import type { ArrivingProps } from './ArrivingWho.tsx';
import { type ArrivalDraft, fromRecord, returningQuery } from './arrival-draft.ts';
import styles from './arriving.module.css';
import { HoursField } from './HoursField.tsx';
import { ReturningUnit } from './ReturningUnit.tsx';

const settleMs = 350;

function useSettled(text: string): string {
  const [settled, setSettled] = useState(text);
  useEffect(() => {
    const timer = setTimeout(() => setSettled(text), settleMs);
    return () => clearTimeout(timer);
  }, [text]);
  return settled;
}

function useReturning(draft: ArrivalDraft) {
  const serial = useSettled(draft.isUnreadable ? '' : draft.serial.trim());
  const modelId = draft.model?.id ?? '';
  return useQuery({ ...returningQuery(serial, modelId), enabled: serial !== '' && modelId !== '' }).data?.rows ?? [];
}

/** The unit's own serial, what the shop knows of it, and its hours with the meter they were read from. */
export function IdentityFields({ draft, set }: ArrivingProps) {
  const known = useReturning(draft);
  return (
    <>
      <section className="field-group stack" aria-labelledby="serial-of-unit">
        <h2 id="serial-of-unit">Serial</h2>
        <div className={styles.identity}>
          <TextField
            name={draft.isUnreadable ? 'unreadable' : 'serial'}
            label="Serial of the unit"
            hint="Often the hub’s serial carries the propeller’s identity: ask"
            value={draft.serial}
            isDisabled={draft.isUnreadable}
            onChange={(serial) => set({ serial })}
            isCode
            isRequired
            after={
              <Checkbox
                aria-label="Unit: not readable yet"
                isSelected={draft.isUnreadable}
                onChange={(isUnreadable) => set({ isUnreadable, serial: '' })}
              >
                not readable yet
              </Checkbox>
            }
          />
          <div role="status">
            {known.map((record) => (
              <ReturningUnit
                key={record.itemId}
                record={record}
                onTakeOver={() => set({ parts: fromRecord(draft.parts, record) })}
              />
            ))}
          </div>
        </div>
      </section>
      <FieldGroup
        title="Hours and cycles of the unit"
        note="As the logbook or the customer says. Unknown is an answer."
      >
        <HoursField
          name="times/sinceNewTenths"
          label="Since new"
          value={draft.sinceNew}
          onChange={(sinceNew) => set({ sinceNew })}
        />
        <HoursField
          name="times/sinceOverhaulTenths"
          label="Since overhaul"
          value={draft.sinceOverhaul}
          onChange={(sinceOverhaul) => set({ sinceOverhaul })}
        />
        <HoursField
          name="times/sinceNewCycles"
          label="Cycles since new"
          counts="cycles"
          value={draft.cyclesSinceNew}
          onChange={(cyclesSinceNew) => set({ cyclesSinceNew })}
        />
        <Select
          name="times/meter"
          label="Which meter they come from"
          placeholder="Choose when hours are known"
          value={draft.meter}
          onChange={(meter) => set({ meter })}
          choices={hourMeterChoices}
        />
        <DecimalField
          name="times/meterTenths"
          label="What that meter read"
          unit="h"
          decimals={1}
          value={draft.meterReading}
          onChange={(meterReading) => set({ meterReading })}
        />
      </FieldGroup>
    </>
  );
}
