import type { SheetOf } from '@hubwright/contracts/manuals/sheets';
import { missingFit, type PlaceFitted } from '@hubwright/rules/fit';

/** One place as it is being measured and fitted: by term, by thickness. */
export interface PlaceDraft {
  readonly measured: Readonly<Record<string, string>>;
  readonly pieces: Readonly<Record<string, string>>;
  readonly trial: string;
}
export type FitDraft = Readonly<Record<string, PlaceDraft>>;
const noPlace: PlaceDraft = { measured: {}, pieces: {}, trial: '' };

export const placeDraft = (draft: FitDraft, place: string) => draft[place] ?? noPlace;

/** A place as the rule takes it. What is not typed yet is left out. */
export function placeFitted(draft: FitDraft, place: string, spec: SheetOf<'fit'>): PlaceFitted {
  const { measured, pieces, trial } = placeDraft(draft, place);
  return {
    place,
    measured: spec.terms.map(({ name }) => ({ name, value: measured[name] ?? '' })),
    shims: spec.shims.flatMap(({ thickness }) => {
      const count = pieces[thickness] ?? '';
      return count === '' ? [] : [{ thickness, pieces: Number(count) }];
    }),
    trial,
  };
}

/** What is missing, by name; empty when nothing is. */
export function fitLeft(draft: FitDraft, spec: SheetOf<'fit'>): string {
  const fitted = spec.places.map((place) => placeFitted(draft, place, spec));
  const broken = fitted.find(({ shims }) => shims.some(({ pieces }) => !Number.isInteger(pieces) || pieces < 0));
  if (broken) return `${broken.place}: shims are whole pieces`;
  return missingFit(fitted, spec) ?? '';
}
