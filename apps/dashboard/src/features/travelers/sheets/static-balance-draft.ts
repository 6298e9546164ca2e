import type { StaticBalanceSheet } from '@hubwright/contracts/manuals/static-balance-sheet';
import type { EntryOf } from '@hubwright/contracts/work-orders/sheet-entries';
import { adviseStatic, type StaticAdvice } from '@hubwright/rules/balance';
import { RuleError } from '@hubwright/rules/errors';
import type { PropellerPosition } from '../../../ui/pictures/PropellerFront.tsx';
import type { WeightPlace } from '../../../ui/pictures/WeightPlaces.tsx';

/** One way of standing as it is being written down. */
export interface ReadingDraft {
  readonly heavy: string | null;
  readonly weight: string;
  readonly radius: string;
}
type Readings = Readonly<Record<'vertical' | 'horizontal', ReadingDraft>>;
/** Pieces by place and part, as typed; nothing typed is none. */
export type Counts = Readonly<Record<string, string>>;

/** A static balance as it is being written down; nothing is filled in beforehand. */
export interface StaticBalanceDraft {
  readonly before: Readings;
  readonly hadWeights: boolean;
  readonly found: Counts;
  readonly placed: Counts;
  readonly after: Readings;
}

const unread: ReadingDraft = { heavy: null, weight: '', radius: '' };
const neither: Readings = { vertical: unread, horizontal: unread };
export const noBalance: StaticBalanceDraft = {
  ...{ before: neither, hadWeights: false, found: {}, placed: {}, after: neither },
};

type Entry = EntryOf<'static-balance'>;
const number = /^\d{1,12}(\.\d{1,8})?$/;
const whole = /^\d{1,3}$/;

/** Key of a place and a part among the counts. */
export const keyOf = (place: string, part: string) => `${place} ${part}`;

function readingOf({ heavy, weight, radius }: ReadingDraft) {
  if (heavy === null) return undefined;
  if (heavy === 'level') return { heavy };
  return number.test(weight) && number.test(radius) ? { heavy, weight, radius } : undefined;
}

function readingsOf({ vertical, horizontal }: Readings) {
  const read = { vertical: readingOf(vertical), horizontal: readingOf(horizontal) };
  return read.vertical && read.horizontal ? (read as Entry['before']) : undefined;
}

function piecesOf(counts: Counts, { places, hardware }: StaticBalanceSheet): Entry['placed'] | undefined {
  const given = places.flatMap(({ name: place }) =>
    hardware.map(({ part }) => ({ place, part, text: counts[keyOf(place, part)] ?? '' })),
  );
  if (given.some(({ text }) => text !== '' && !whole.test(text))) return undefined;
  return given.filter(({ text }) => Number(text) > 0).map(({ text, ...one }) => ({ ...one, pieces: Number(text) }));
}

/** The entry as the command takes it; undefined while a reading is missing or a number cannot be read. */
export function entryOf(draft: StaticBalanceDraft, spec: StaticBalanceSheet): Entry | undefined {
  const [before, after] = [readingsOf(draft.before), readingsOf(draft.after)];
  const found = draft.hadWeights ? piecesOf(draft.found, spec) : [];
  const placed = piecesOf(draft.placed, spec);
  if (!before || !after || !found || !placed) return undefined;
  return { kind: 'static-balance', before, found, placed, after };
}

/** Where pieces would go by the first readings; a sentence where these cannot be, undefined while they are missing. */
export function adviceOf(draft: StaticBalanceDraft, spec: StaticBalanceSheet): StaticAdvice | string | undefined {
  const before = readingsOf(draft.before);
  const found = draft.hadWeights ? piecesOf(draft.found, spec) : [];
  if (!before || !found) return undefined;
  try {
    return adviseStatic({ before, found }, spec);
  } catch (error) {
    if (!(error instanceof RuleError)) throw error;
    return error.message;
  }
}

/** Pieces proposed for one place and part. */
export function proposedAt(advice: StaticAdvice | string | undefined, place: string, part: string): number {
  if (advice === undefined || typeof advice === 'string') return 0;
  const filling = advice.fillings.find((one) => one.place === place);
  return filling?.pieces.find((one) => one.part === part)?.count ?? 0;
}

/** Blades and places as the front view draws them: what is on each and, before anything is, what is proposed. */
export function frontOf(
  spec: StaticBalanceSheet,
  draft: StaticBalanceDraft,
  advice: StaticAdvice | string | undefined,
): { blades: PropellerPosition[]; hub: PropellerPosition; places: WeightPlace[] } {
  const placed = piecesOf(draft.placed, spec) ?? [];
  const blades = Array.from({ length: spec.blades }, (_, index) => ({
    ...{ key: `blade-${index + 1}`, label: String(index + 1), state: 'open' as const },
    words: index === 0 ? 'the reference blade' : 'blade',
  }));
  const places = spec.places.map(({ name, angle, pieces }) => {
    const on = placed.filter(({ place }) => place === name).reduce((sum, one) => sum + one.pieces, 0);
    const asked = spec.hardware.reduce((sum, { part }) => sum + proposedAt(advice, name, part), 0);
    return {
      ...{ key: name, label: name, turn: Number(angle), isFilled: on > 0, isAsked: asked > 0, showsRoom: true },
      words: on > 0 ? `${on} of ${pieces}` : asked > 0 ? `+${asked} of ${pieces}` : `0 of ${pieces}`,
    };
  });
  return { blades, hub: { key: 'hub', label: '', state: 'open', words: 'hub' }, places };
}
