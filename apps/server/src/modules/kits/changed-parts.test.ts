import { describe, expect, it } from '@jest/globals';
import type { Ask } from './ask.ts';
import { ChangedParts } from './changed-parts.ts';

/** The news after one write, told by its nouns and what it was about. */
async function newsOf(nouns: readonly string[], kinds: readonly string[]) {
  const subjects = kinds.map((kind, at) => ({ kind, id: `00000000-0000-7000-8000-00000000000${at}` }));
  const rows = [{ position: '1-1', nouns, subjects, settled: true }];
  const ask = (async (text: string) => (text.includes('FROM outbox') ? rows : [])) as unknown as Ask;
  return new ChangedParts().next(ask);
}

describe('what a write means for the kept answer', () => {
  it.each([
    ['a batch goes to a vendor', ['vendors', 'work-orders'], ['vendor-order', 'traveler']],
    ['a due date with a vendor moves', ['vendors'], ['vendor-order']],
    ['a wrong delivery goes back', ['purchasing'], ['held-delivery']],
    ['a directive is issued', ['directives', 'releases'], ['directive']],
    ['a photo is put to a finding', ['findings'], ['photo', 'finding']],
    ['a reading is taken at the aircraft', ['field-balance'], ['field-balance']],
    ['a governor runs', ['governor-tests', 'work-orders'], ['governor-run', 'traveler-step']],
    ['peening media is checked', ['peening', 'releases'], ['peening-machine', 'peening-media']],
    ['a manual is checked to be current', ['manuals'], ['manual', 'manual-revision']],
    ['a flat rate is set', ['manuals'], ['model']],
    ['a revision is issued', ['manuals', 'work-orders', 'kits'], ['manual', 'manual-revision']],
  ])('is not to read everything anew when %s', async (_, nouns, kinds) => {
    expect((await newsOf(nouns, kinds)).everything).toBe(false);
  });

  it.each([
    ['something nobody knows was written', ['kits'], ['something-new']],
    ['a table came in that is longer than its chains', ['imports', 'inventory'], ['import']],
  ])('is to read everything anew when %s', async (_, nouns, kinds) => {
    expect((await newsOf(nouns, kinds)).everything).toBe(true);
  });

  it('is to look ahead anew where units, orders or lists are about, not where stock moves', async () => {
    expect((await newsOf(['inventory'], ['lot'])).foreseen).toBe('same');
    expect((await newsOf(['work-orders'], ['work-order'])).foreseen).toBe('demand');
    expect((await newsOf(['manuals', 'kits'], ['manual-revision'])).foreseen).toBe('lists');
  });
});
