import { describe, expect, it } from '@jest/globals';
import { countClasses, countDue, countTolerance, inWhatTheyDiffer, type LotIdentity } from './index.ts';

const lot: LotIdentity = {
  part: 'NUT',
  state: 'accepted',
  certificate: 'C-1',
  supplierLot: 'S-1',
  source: 'maker-new',
  cureDate: null,
  expires: null,
  owner: null,
  order: null,
  unitPrice: '1.00',
  serial: null,
  frozen: false,
};

describe('whether two lots are one', () => {
  it('says nothing of equal ones, and names each difference', () => {
    expect(inWhatTheyDiffer(lot, { ...lot })).toEqual([]);
    expect(inWhatTheyDiffer(lot, { ...lot, certificate: 'C-2', owner: 'them' })).toEqual([
      'the certificate',
      'whose they are',
    ]);
  });
  it('never takes serialized pieces or frozen material for one', () => {
    expect(inWhatTheyDiffer({ ...lot, serial: 'A' }, { ...lot, serial: 'A' })).toEqual(['the serial']);
    expect(inWhatTheyDiffer({ ...lot, frozen: true }, { ...lot, frozen: true })).toEqual([
      'the time out of the freezer',
    ]);
  });
});

describe('what is counted when', () => {
  it('a part belongs to the class in which it begins, and what is worth nothing is C', () => {
    const parts = [
      { part: 'NUT', units: 10, unitPrice: '1' },
      { part: 'HUB', units: 9, unitPrice: '10' },
      { part: 'TAG', units: 4, unitPrice: '0' },
    ];
    expect([...countClasses(parts)]).toEqual([
      ['HUB', 'A'],
      ['NUT', 'B'],
      ['TAG', 'C'],
    ]);
    expect([...countClasses([{ part: 'TAG', units: 0, unitPrice: '5' }])]).toEqual([['TAG', 'C']]);
  });
  it('refuses half pieces', () => {
    expect(() => countClasses([{ part: 'NUT', units: 0.5, unitPrice: '1' }])).toThrow(
      expect.objectContaining({ code: 'not-a-quantity' }),
    );
  });
  it('monthly, quarterly, half-yearly', () => {
    expect((['A', 'B', 'C'] as const).map((each) => countDue(each, '2026-01-01'))).toEqual([
      '2026-01-31',
      '2026-04-02',
      '2026-07-02',
    ]);
  });
  it('has no tolerance where every piece is known by name', () => {
    expect(countTolerance(1000, { exact: true })).toBe(0);
  });
});
