import { judgeEddyCurrent, sayEddyCurrent } from '@hubwright/rules/eddy-current';
import { type EddyCurrentDraft, EddyCurrentFields } from './EddyCurrentFields.tsx';
import type { SheetForm } from './sheet-form.ts';

const empty: EddyCurrentDraft = {
  ...{ probe: '', frequency: '', gain: '', standardSerial: '', notchDepth: '', before: '', after: '' },
};

export const eddyCurrentForm: SheetForm<'eddy-current', EddyCurrentDraft> = {
  empty,
  Fields: EddyCurrentFields,
  missing: 'the eddy-current set-up is not entered whole',
  entryOf: (draft) =>
    Object.values(draft).every((text) => text.trim() !== '') ? { kind: 'eddy-current', ...draft } : undefined,
  judge(entry, { spec }) {
    const verdict = judgeEddyCurrent(entry, spec);
    return { said: sayEddyCurrent(entry, spec, verdict), reasons: verdict.reasons };
  },
};
