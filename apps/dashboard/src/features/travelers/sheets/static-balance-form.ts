import { judgeStatic, sayStatic } from '@hubwright/rules/balance';
import { StaticBalanceFields } from './StaticBalanceFields.tsx';
import type { SheetForm } from './sheet-form.ts';
import { entryOf, noBalance, type StaticBalanceDraft } from './static-balance-draft.ts';

/** A static balance: read, weights as proposed or otherwise, read again. */
export const staticBalanceForm: SheetForm<'static-balance', StaticBalanceDraft> = {
  empty: noBalance,
  Fields: StaticBalanceFields,
  missing: 'the readings of the balance are not entered whole',
  entryOf: (draft, { spec }) => entryOf(draft, spec),
  judge(entry, { spec }) {
    const verdict = judgeStatic(entry, spec);
    return { said: sayStatic(entry, spec, verdict), reasons: verdict.reasons };
  },
};
