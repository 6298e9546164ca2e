import { describe, expect, it } from '@jest/globals';
import { mostOf, overhaulFacts, recordWord } from './index.ts';

const all = [...overhaulFacts];

describe('the word a record may use', () => {
  // 14 CFR 43.2(a): disassembled, cleaned, inspected, repaired as necessary, reassembled, and tested.
  it.each(['overhaul', 'governor'])('is overhauled when all six facts are shown in the scope %s', (scope) => {
    expect(recordWord({ scope, facts: all, repaired: false }).word).toBe('overhauled');
  });

  const lacking = ['overhaul', 'governor'].flatMap((scope) => all.map((fact) => [scope, fact] as const));
  it.each(lacking)('is not overhauled in the scope %s without %s', (scope, fact) => {
    const answer = recordWord({ scope, facts: all.filter((one) => one !== fact), repaired: true });
    expect(answer).toEqual({
      word: 'repaired',
      missing: [fact],
      basis: `Not overhauled: no signed step shows ${fact}`,
    });
  });

  it.each(['reseal', 'inspect-and-repair', 'strike-inspection', 'balance-only', 'fixed-pitch'])(
    'is not overhauled for the scope %s, whatever was done',
    (scope) => {
      expect(recordWord({ scope, facts: all, repaired: true }).word).toBe('repaired');
    },
  );

  it('is inspected when nothing was repaired or replaced', () => {
    expect(recordWord({ scope: 'inspect-and-repair', facts: ['inspected'], repaired: false }).word).toBe('inspected');
  });

  it('is at most what its scope allows, and only an overhaul restarts the time since overhaul', () => {
    for (const scope of ['overhaul', 'governor'])
      expect(mostOf(scope)).toEqual({ word: 'overhauled', restartsTimeSinceOverhaul: true });
    for (const scope of ['reseal', 'inspect-and-repair', 'strike-inspection', 'balance-only', 'fixed-pitch'])
      expect(mostOf(scope)).toEqual({ word: 'repaired', restartsTimeSinceOverhaul: false });
  });
});
