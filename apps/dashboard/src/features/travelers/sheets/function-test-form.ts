import { judgeFunctionTest, sayFunctionTest, valuesAsked } from '@hubwright/rules/function-test';
import { type FunctionTestDraft, FunctionTestFields } from './FunctionTestFields.tsx';
import { acceptedValues } from './function-test-asked.ts';
import type { SheetForm } from './sheet-form.ts';

export const functionTestForm: SheetForm<'function-test', FunctionTestDraft> = {
  empty: { medium: null, cycles: '', values: {} },
  Fields: FunctionTestFields,
  missing: 'the function test is not entered whole',
  entryOf({ medium, cycles, values }, { spec }) {
    const read = valuesAsked(spec).map(({ path }) => ({ of: path, value: values[path] ?? '' }));
    const isLeak = spec.leak !== undefined;
    if (read.some(({ value }) => value === '') || (isLeak && (medium === null || !/^\d{1,3}$/.test(cycles))))
      return undefined;
    const leak = isLeak && medium !== null ? { medium, cycles: Number(cycles) } : {};
    return { kind: 'function-test', ...leak, values: read };
  },
  judge(entry, about) {
    const verdict = judgeFunctionTest(entry, about.spec, acceptedValues(about));
    return { said: sayFunctionTest(entry, about.spec), reasons: verdict.reasons };
  },
};
