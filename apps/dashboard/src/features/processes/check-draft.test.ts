import { expect, it } from '@jest/globals';
import { checkInput, draftOf, emptyCheck } from './check-draft.ts';

it('a check goes through its form unchanged', () => {
  const check = {
    name: 'UV-A',
    unit: 'µW/cm²',
    low: '1000',
    due: { by: 'hours', every: 8 },
    source: 'practice',
  } as const;
  expect(checkInput(draftOf(check, 1))).toEqual(check);
  const seen = { name: 'panel', unit: '', confirm: true, due: { by: 'day-of-use' }, source: 'practice' } as const;
  expect(checkInput(draftOf(seen, 2))).toEqual(seen);
});

it('a confirmation takes no limit along', () => {
  const draft = { ...emptyCheck(1), name: 'panel', low: '1', unit: 'V', confirm: true, source: 'practice' };
  expect(checkInput(draft)).toEqual({
    name: 'panel',
    unit: '',
    confirm: true,
    due: { by: 'day-of-use' },
    source: 'practice',
  });
});
