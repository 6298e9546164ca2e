import { describe, expect, it } from '@jest/globals';
import fc from 'fast-check';
import { explodeKitList, type ListLine, serialInRange } from './index.ts';

const base: ListLine = {
  id: 'line',
  partId: 'part',
  position: 'O-ring',
  scopes: ['overhaul', 'reseal'],
  per: 'unit',
  quantity: 1,
  source: 'new',
};
const unit = { scope: 'overhaul', serial: 'QG1042', bladeCount: 3 };

describe('a serial range', () => {
  it('counts by trailing digits, both ends included', () => {
    expect(
      ['QG999', 'QG1000', 'QG1999', 'QG2000'].map((s) => serialInRange(s, { from: 'QG1000', to: 'QG1999' })),
    ).toEqual([false, true, true, false]);
  });

  it('does not compare text: QG999 comes before QG1000', () => {
    expect(serialInRange('QG999', { to: 'QG1000' })).toBe(true);
  });

  it('takes leading zeros, case and dashes as habits of writing', () => {
    expect(serialInRange('qg-01042', { from: 'QG1042', to: 'QG1042' })).toBe(true);
  });

  it('leaves out another family and serials without digits', () => {
    expect([serialInRange('QH1200', { from: 'QG1000' }), serialInRange('PROTO', { from: 'QG1000' })]).toEqual([
      false,
      false,
    ]);
  });

  it('refuses ranges that make no sense', () => {
    expect(() => serialInRange('QG1', { from: 'QG5', to: 'QG4' })).toThrow('ends before it begins');
    expect(() => serialInRange('QG1', { from: 'QG5', to: 'QH9' })).toThrow('one family');
    expect(() => serialInRange('QG1', { from: 'ALL' })).toThrow('ends in digits');
  });
});

describe('the kit list of one unit', () => {
  it('repeats lines per blade and names each position', () => {
    const { lines } = explodeKitList(
      [{ ...base, per: 'blade', position: 'clamp bolts', quantity: 2, source: 'reused' }],
      unit,
    );
    expect(lines.map(({ position, quantity, source }) => [position, quantity, source])).toEqual([
      ['blade 1 clamp bolts', 2, 'reused'],
      ['blade 2 clamp bolts', 2, 'reused'],
      ['blade 3 clamp bolts', 2, 'reused'],
    ]);
  });

  it('takes the lines of the scope only', () => {
    const list = [base, { ...base, id: 'other', scopes: ['balance-only'] }];
    expect(explodeKitList(list, unit).lines.map((line) => line.listLineId)).toEqual(['line']);
  });

  it('keeps an as-needed line as needed', () => {
    const { lines } = explodeKitList([{ ...base, position: 'safety wire', quantity: 120, minimum: 0 }], unit);
    expect(lines).toEqual([
      { listLineId: 'line', partId: 'part', position: 'safety wire', quantity: 120, minimum: 0, source: 'new' },
    ]);
  });

  it('picks by serial, and never guesses for a unit whose serial is not read', () => {
    const list = [
      { ...base, id: 'early', serialTo: 'QG1499' },
      { ...base, id: 'late', serialFrom: 'QG1500' },
      { ...base, id: 'all' },
    ];
    const ids = (serial: string | null) => {
      const { lines, undecided } = explodeKitList(list, { ...unit, serial });
      return [lines.map((line) => line.listLineId), undecided.map((line) => line.id)];
    };
    expect(ids('QG1042')).toEqual([['early', 'all'], []]);
    expect(ids('QG1500')).toEqual([['late', 'all'], []]);
    expect(ids(null)).toEqual([['all'], ['early', 'late']]);
  });

  it('refuses a line per blade on a unit without blades, and quantities that are not whole pieces', () => {
    expect(() => explodeKitList([{ ...base, per: 'blade' }], { ...unit, bladeCount: 0 })).toThrow('no blades');
    expect(() => explodeKitList([{ ...base, quantity: 1.5 }], unit)).toThrow('at least one whole piece');
    expect(() => explodeKitList([{ ...base, minimum: 2 }], unit)).toThrow('between none and the most');
  });

  it('asks for per-unit pieces once and per-blade pieces once a blade, whatever the list', () => {
    const line = fc.record({ per: fc.constantFrom('unit', 'blade'), quantity: fc.integer({ min: 1, max: 50 }) });
    fc.assert(
      fc.property(fc.array(line, { maxLength: 20 }), fc.integer({ min: 2, max: 6 }), (lines, bladeCount) => {
        const list = lines.map((given, index) => ({ ...base, ...given, id: String(index) }) as ListLine);
        const exploded = explodeKitList(list, { ...unit, bladeCount });
        const asked = exploded.lines.reduce((sum, { quantity }) => sum + quantity, 0);
        const expected = lines.reduce(
          (sum, { per, quantity }) => sum + quantity * (per === 'blade' ? bladeCount : 1),
          0,
        );
        expect(asked).toBe(expected);
      }),
    );
  });
});
