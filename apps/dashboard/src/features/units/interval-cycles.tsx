import type { CycleMeter } from '@hubwright/contracts/customers/operations';
import { cycleMeterChoices } from '../../format/meter-words.tsx';
import { DecimalField } from '../../ui/DecimalField.tsx';
import { Select } from '../../ui/Select.tsx';
import { leftEmpty, wholeOf } from './times-as-of.ts';

interface Draft {
  readonly to: string;
  readonly fromCycles: string;
  readonly toCycles: string;
}

export function wholeText(count: number | 'unknown' | null): string {
  return typeof count === 'number' ? String(count) : '';
}

/** What is sent of its meter of cycles: nothing where none was named. */
export function cyclesIn(meter: CycleMeter | null, { fromCycles, to, toCycles }: Draft) {
  if (meter === null) return {};
  return { cycles: { meter, from: wholeOf(fromCycles), ...(to === '' ? {} : { to: wholeOf(toCycles) }) } };
}

interface CyclesProps {
  readonly meter: CycleMeter | null;
  readonly onMeter: (meter: CycleMeter | null) => void;
  readonly draft: Draft;
  readonly set: (name: 'fromCycles' | 'toCycles') => (text: string) => void;
}

/** The meter of cycles beside that of the hours, where its parts have a life in cycles. */
export function Cycles({ meter, onMeter, draft, set }: CyclesProps) {
  return (
    <>
      <Select
        name="cycles/meter"
        label="Cycles from which meter, where they count"
        value={meter}
        onChange={onMeter}
        choices={cycleMeterChoices}
      />
      {meter === null ? null : (
        <DecimalField
          name="cycles/from"
          label="Cycles then"
          hint={leftEmpty}
          decimals={0}
          value={draft.fromCycles}
          onChange={set('fromCycles')}
        />
      )}
      {meter === null || draft.to === '' ? null : (
        <DecimalField
          name="cycles/to"
          label="Cycles at removal"
          hint={leftEmpty}
          decimals={0}
          value={draft.toCycles}
          onChange={set('toCycles')}
        />
      )}
    </>
  );
}
