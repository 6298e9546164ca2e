import { judgeTorque, sayTorque } from '@hubwright/rules/torque';
import type { SheetForm } from './sheet-form.ts';
import { TorqueFields } from './TorqueFields.tsx';
import { nothingTorqued, type TorqueDraft, torqueDone, torqueLeft } from './torque-draft.ts';

export const torqueForm: SheetForm<'torque', TorqueDraft> = {
  empty: nothingTorqued,
  Fields: TorqueFields,
  missing: (draft, { spec }) => torqueLeft(draft, spec),
  entryOf(draft, { spec }) {
    if (torqueLeft(draft, spec) !== '') return undefined;
    const { passes, threads, safetied, ...cycled } = torqueDone(draft, spec);
    const done = passes.map(({ adapter, places, ...pass }) => ({
      ...{ ...pass, places: [...places] },
      ...(adapter ? { adapter } : {}),
    }));
    return { kind: 'torque', passes: done, threads: [...threads], safetied: [...safetied], ...cycled };
  },
  judge(entry, { spec }) {
    const verdict = judgeTorque(entry, spec);
    return { said: sayTorque(entry, spec), reasons: verdict.reasons };
  },
};
