import { judgeFit, sayFit } from '@hubwright/rules/fit';
import { FitFields } from './FitFields.tsx';
import { type FitDraft, fitLeft, placeFitted } from './fit-draft.ts';
import type { SheetForm } from './sheet-form.ts';

export const fitForm: SheetForm<'fit', FitDraft> = {
  empty: {},
  Fields: FitFields,
  missing: (draft, { spec }) => fitLeft(draft, spec),
  entryOf(draft, { spec }) {
    if (fitLeft(draft, spec) !== '') return undefined;
    const places = spec.places.map((place) => {
      const { measured, shims, trial } = placeFitted(draft, place, spec);
      return { place, measured: [...measured], shims: [...shims], trial };
    });
    return { kind: 'fit', places };
  },
  judge({ places }, { spec }) {
    const verdict = judgeFit(places, spec);
    return { said: sayFit(places, spec), reasons: verdict.reasons };
  },
};
