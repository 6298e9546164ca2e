import { judgeCharge, sayCharge } from '@hubwright/rules/charge';
import { type ChargeDraft, ChargeFields } from './ChargeFields.tsx';
import type { SheetForm } from './sheet-form.ts';

export const chargeForm: SheetForm<'charge', ChargeDraft> = {
  empty: { medium: null, temperature: '', settledMinutes: '', pressure: '' },
  Fields: ChargeFields,
  missing: 'the charge is not entered whole',
  entryOf({ medium, ...read }) {
    if (medium === null || Object.values(read).some((text) => text === '')) return undefined;
    return { kind: 'charge', medium, ...read };
  },
  judge(entry, { spec }) {
    const verdict = judgeCharge(entry, spec);
    return { said: sayCharge(entry, spec, verdict), reasons: verdict.reasons };
  },
};
