import { describe, expect, it } from '@jest/globals';
import fc from 'fast-check';
import { matchHeadings, plainHeading } from './index.ts';

const fields = [
  { field: 'registration', title: 'registration', also: ['reg', 'tail'] },
  { field: 'serial', title: 'serial', also: ['s/n', 'serial number'] },
  { field: 'sinceNew', title: 'time since new', also: ['tsn'] },
  { field: 'sinceOverhaul', title: 'time since overhaul', also: ['tso'] },
];
const matched = (header: string[], remembered = {}) => matchHeadings(header, fields, remembered);

describe('headings of a table', () => {
  it('are read by their title, then by other words for it, whatever the case and the signs between', () => {
    expect(matched(['TSN', 'Serial_Number', 'REG', 'Time-Since-Overhaul', 'Colour'])).toEqual({
      mapping: { sinceNew: 0, serial: 1, registration: 2, sinceOverhaul: 3 },
      how: { sinceNew: 'named', serial: 'named', registration: 'named', sinceOverhaul: 'named' },
    });
  });

  it('are read where they are nearly named, and say so', () => {
    expect(matched(['Regstration', 'No. serial', 'since new time'])).toEqual({
      mapping: { registration: 0, serial: 1, sinceNew: 2 },
      how: { registration: 'near', serial: 'near', sinceNew: 'near' },
    });
  });

  it('are left open where two are equally near, and where short ones differ', () => {
    expect(matched(['time since', 'tsx']).mapping).toEqual({});
    expect(matched(['registratian', 'registratien']).mapping).toEqual({});
  });

  it('are read as a person said before, and left alone where a person said so', () => {
    const remembered = { colour: 'registration', serial: '' };
    expect(matched(['Colour', 'Serial', 'S/N'], remembered)).toEqual({
      mapping: { registration: 0, serial: 2 },
      how: { registration: 'remembered', serial: 'named' },
    });
    expect(matched(['constructor', 'Colour'], { colour: 'no such field' }).mapping).toEqual({});
  });

  it('never give one column to two fields, whatever stands there', () => {
    const words = fc.constantFrom('time', 'since', 'new', 'overhaul', 'serial', 'reg', 'no', 'tsn', 'number');
    const heads = fc.array(
      fc.array(words, { maxLength: 4 }).map((some) => some.join(' ')),
      { maxLength: 8 },
    );
    fc.assert(
      fc.property(heads, (header) => {
        const columns = Object.values(matched(header).mapping);
        expect(new Set(columns).size).toBe(columns.length);
        expect(columns.every((at) => plainHeading(header[at] ?? '') !== '')).toBe(true);
      }),
    );
  });
});
