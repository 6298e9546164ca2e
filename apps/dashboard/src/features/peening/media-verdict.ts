import { judgeMedia } from '@hubwright/rules/peening';
import type { Media } from './peening.ts';

export interface CheckDraft {
  readonly percents: Readonly<Record<string, string>>;
  readonly broken: string;
  readonly clean: 'clean' | 'contaminated' | null;
  readonly meterHours: string;
  readonly note: string;
}
export const noDraft: CheckDraft = { percents: {}, broken: '', clean: null, meterHours: '', note: '' };

/** What the readings say so far; nothing while one is missing or no number. */
export function verdict(
  { limits, everyHours }: Pick<Media, 'limits' | 'everyHours'>,
  { percents, broken, clean, meterHours }: CheckDraft,
) {
  const isWhole = [...limits.sieves.map(({ name }) => percents[name] ?? ''), broken].every((text) => text !== '');
  if (!isWhole || clean === null || (everyHours !== null && meterHours === '')) return undefined;
  const number = (text: string | undefined) => (text === undefined ? undefined : Number(text));
  const sieves = limits.sieves.map(({ name, low, high }) => ({ name, low: number(low), high: number(high) }));
  const read = limits.sieves.map(({ name }) => ({ name, percent: Number(percents[name]) }));
  try {
    return judgeMedia(
      { sieves, mostBroken: limits.mostBroken },
      { sieves: read, broken: Number(broken), clean: clean === 'clean' },
    );
  } catch {
    return undefined;
  }
}
