import { type ChosenRun, GovernorTestFields } from './GovernorTestFields.tsx';
import type { SheetForm } from './sheet-form.ts';

/** The test of a governor: which run on the bench it is signed with. The points stand in the run. */
export const governorTestForm: SheetForm<'governor-test', ChosenRun | null> = {
  empty: null,
  Fields: GovernorTestFields,
  missing: 'no run on the bench is chosen',
  entryOf: (chosen) => (chosen ? { kind: 'governor-test', runId: chosen.id } : undefined),
  judge(_entry, _about, chosen) {
    if (!chosen) return undefined;
    return {
      said: [{ name: 'run on the bench', value: `${chosen.number}, ${chosen.state}` }],
      reasons: chosen.state === 'failed' ? [`Run ${chosen.number} failed.`] : [],
    };
  },
};
