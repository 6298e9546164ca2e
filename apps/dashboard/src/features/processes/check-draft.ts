import type { EquipmentCheck } from '@hubwright/contracts/processes/equipment-operations';

/** A check as it is being written down. */
export interface CheckDraft {
  readonly key: number;
  readonly name: string;
  readonly unit: string;
  readonly low: string;
  readonly high: string;
  readonly confirm: boolean;
  readonly by: EquipmentCheck['due']['by'];
  readonly every: string;
  readonly source: string;
}

export function emptyCheck(key: number): CheckDraft {
  return { key, name: '', unit: '', low: '', high: '', confirm: false, by: 'day-of-use', every: '', source: '' };
}

export function draftOf(check: EquipmentCheck, key: number): CheckDraft {
  const { name, unit, low = '', high = '', confirm = false, due, source } = check;
  return {
    key,
    name,
    unit,
    low,
    high,
    confirm,
    source,
    by: due.by,
    every: due.by === 'day-of-use' ? '' : String(due.every),
  };
}

/** The check as the command takes it; what is empty is left out. */
export function checkInput({ name, unit, low, high, confirm, by, every, source }: CheckDraft): EquipmentCheck {
  const due: EquipmentCheck['due'] = by === 'day-of-use' ? { by } : { by, every: Number(every) };
  if (confirm) return { name, unit: '', confirm, due, source };
  return { name, unit, due, source, ...(low === '' ? {} : { low }), ...(high === '' ? {} : { high }) };
}
