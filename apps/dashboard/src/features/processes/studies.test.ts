import { describe, expect, it } from '@jest/globals';
import { cellsFrom, gaugeWords } from './studies.ts';

describe('readings of a study', () => {
  it('come from a spreadsheet or the keyboard, one line for an appraiser and a part', () => {
    const { cells, wrong } = cellsFrom('Ludo\t1\t1.0002\t1.0003\n\nMaren; 1; 1.0001; -1.5\r\nLudo,2,7,8');
    expect(wrong).toEqual([]);
    expect(cells).toEqual([
      { appraiser: 'Ludo', part: '1', readings: ['1.0002', '1.0003'] },
      { appraiser: 'Maren', part: '1', readings: ['1.0001', '-1.5'] },
      { appraiser: 'Ludo', part: '2', readings: ['7', '8'] },
    ]);
  });

  it('that cannot be read are told by their line', () => {
    expect(cellsFrom('Ludo,1\nLudo,2,about 3\n,3,1,2').wrong).toHaveLength(3);
  });

  it('are judged by the share that is the gauge', () => {
    expect([10, 10.1, 30, 30.1].map((percent) => gaugeWords(percent).state)).toEqual([
      'passed',
      'hold',
      'hold',
      'stop',
    ]);
  });
});
