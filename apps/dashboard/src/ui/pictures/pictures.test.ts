import { describe, expect, it } from '@jest/globals';
import { layOut, runsOf, stationWords } from './blade-outline-layout.ts';
import { bladeTurn, pointAt } from './blade-shape.ts';
import { gaugeScale } from './gauge-scale.ts';

it('blades stand evenly, the first at the top, clockwise', () => {
  expect([0, 1, 2].map((index) => bladeTurn(index, 3))).toEqual([0, 120, 240]);
  const right = pointAt(90, 10);
  expect(right.x).toBeCloseTo(10);
  expect(right.y).toBeCloseTo(0);
});

describe('a blade outline', () => {
  const drawn = layOut([
    { station: '30', lowest: '6.100', measured: '6.099' },
    { station: '12', lowest: '4.0', measured: null },
    { station: '21', lowest: '5.5', measured: '5.50' },
  ]);

  it('lies in true distance and proportion, whatever order the stations came in', () => {
    expect(drawn.map(({ station, along }) => [station, along])).toEqual([
      ['12', 0],
      ['21', 0.5],
      ['30', 1],
    ]);
    expect(drawn[2]?.halfLowest).toBe(0.5);
  });

  it('calls a width below only when it is less than the limit: the limit itself passes', () => {
    expect(drawn.map((each) => each.isBelow)).toEqual([false, false, true]);
  });

  it('never bridges a station nobody measured', () => {
    const station = (name: string, measured: string | null) => ({ station: name, lowest: '4', measured });
    const five = layOut([
      station('1', '5'),
      station('2', '5'),
      station('3', null),
      station('4', '5'),
      station('5', '5'),
    ]);
    const runs = runsOf(five, (each) => each.halfMeasured);
    expect(runs.map((run) => run.map((each) => each.station))).toEqual([
      ['1', '2'],
      ['4', '5'],
    ]);
    expect(runsOf(five, (each) => each.halfLowest)).toHaveLength(1);
  });

  it('draws nothing where nothing was measured, and says so', () => {
    expect(drawn[0]?.halfMeasured).toBeNull();
    expect(stationWords({ station: '12', lowest: '4.0', measured: null }, false, 'in')).toBe(
      'Station 12: not measured, limit 4.0 in',
    );
  });
});

describe('a limit gauge', () => {
  it('puts the limits at a quarter and three quarters and the value between them', () => {
    expect(gaugeScale('5', '4', '6')).toEqual({ low: 0.25, high: 0.75, value: 0.5, standing: 'inside' });
  });

  it('counts the limits themselves as inside, and holds far values at the ends', () => {
    expect(gaugeScale('6', '4', '6').standing).toBe('inside');
    expect(gaugeScale('60', '4', '6')).toMatchObject({ value: 1, standing: 'above' });
    expect(gaugeScale('0', '4', null)).toMatchObject({ value: 0, standing: 'below' });
    expect(gaugeScale('4.4', null, '6')).toMatchObject({ value: 0.25, high: 0.75, standing: 'inside' });
    expect(gaugeScale('9', '4', null)).toMatchObject({ low: 0.25, value: 0.75, standing: 'inside' });
    for (const text of [null, '', '5x', '5.', '-']) expect(gaugeScale(text, '4', '6').standing).toBe('none');
  });
});
