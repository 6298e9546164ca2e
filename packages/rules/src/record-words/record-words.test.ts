import { describe, expect, it } from '@jest/globals';
import { overhaulFacts, recordWord } from './index.ts';

const all = [...overhaulFacts];

describe('the word a record may use', () => {
  // 14 CFR 43.2(a): disassembled, cleaned, inspected, repaired as necessary, reassembled, and tested.
  it('is overhauled when all six facts are shown in an overhaul', () => {
    expect(recordWord({ scope: 'overhaul', facts: all, repaired: false }).word).toBe('overhauled');
  });

  it.each(all)('is not overhauled without %s', (fact) => {
    const answer = recordWord({ scope: 'overhaul', facts: all.filter((one) => one !== fact), repaired: true });
    expect(answer).toEqual({
      word: 'repaired',
      missing: [fact],
      basis: `Not overhauled: no signed step shows ${fact}`,
    });
  });

  it.each(['reseal', 'inspect-and-repair', 'strike-inspection', 'governor', 'balance-only', 'fixed-pitch'])(
    'is not overhauled for the scope %s, whatever was done',
    (scope) => {
      expect(recordWord({ scope, facts: all, repaired: true }).word).toBe('repaired');
    },
  );

  it('is inspected when nothing was repaired or replaced', () => {
    expect(recordWord({ scope: 'inspect-and-repair', facts: ['inspected'], repaired: false }).word).toBe('inspected');
  });
});
