import type { LotState } from '@hubwright/contracts/inventory/operations';
import type { partClassesInStock } from '@hubwright/contracts/inventory/part-operations';
import { countOf } from '../../format/numbers.ts';
import type { State } from '../../ui/StateMark.tsx';

/** Whether a lot may be used, as shape and word. */
export const lotMarks: Record<LotState, { state: State; word: string }> = {
  quarantine: { state: 'hold', word: 'in quarantine' },
  accepted: { state: 'passed', word: 'accepted' },
  rejected: { state: 'stop', word: 'rejected' },
  suspected: { state: 'stop', word: 'suspected' },
};

export const classWords: Record<(typeof partClassesInStock)[number], string> = {
  mandatory: 'Mandatory replacement',
  hardware: 'Hardware',
  seal: 'Seal',
  consumable: 'Consumable',
  serialized: 'Serialized part',
  raw: 'Raw material',
};

/** Reservations that fell away with the pieces they named; empty when none did. */
export function freedWords(freed: readonly { kitCode: string; quantity: number }[]): string {
  if (freed.length === 0) return '';
  const kits = freed.map((each) => `${countOf(each.quantity, 'piece')} of ${each.kitCode}`);
  return ` Promises that fell away: ${kits.join(', ')}.`;
}
