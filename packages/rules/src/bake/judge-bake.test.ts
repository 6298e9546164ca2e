import { describe, expect, it } from '@jest/globals';
import fc from 'fast-check';
import { type BakeSpec, judgeBake } from './index.ts';

const spec: BakeSpec = {
  startWithinMinutes: 240,
  low: 350,
  high: 400,
  unit: '°F',
  minimumMinutes: 1380,
  dips: 'restart',
};
const at = (clock: string, day = 1) => Date.parse(`2026-03-0${day}T${clock}:00Z`);
const whole = [
  { at: at('12:00'), temperature: 75 },
  { at: at('12:20'), temperature: 350 },
  { at: at('13:00'), temperature: 375 },
  { at: at('11:00', 2), temperature: 375 },
  { at: at('11:20', 2), temperature: 350 },
  { at: at('12:00', 2), temperature: 90 },
];
const bake = (more: object = {}) =>
  judgeBake({ platedAt: at('08:00'), startedAt: at('12:00'), chart: whole, spec, ...more });

describe('a relief bake', () => {
  it('begun at the very limit and held the very time is good', () => {
    expect(bake()).toEqual({ good: true, reasons: [], lateByMinutes: 0, holdMinutes: 1380 });
  });
  it('begun a minute late is not, however long it holds', () => {
    expect(bake({ startedAt: at('12:01') })).toMatchObject({
      good: false,
      reasons: ['The bake began 1 min too late.'],
    });
    expect(bake({ startedAt: at('07:59') }).reasons[0]).toBe('The bake began before the plating ended.');
  });
  it('that dips begins anew or loses the time outside, as the specification says', () => {
    const dipped = [
      ...whole.slice(0, 3),
      { at: at('20:00'), temperature: 375 },
      { at: at('20:05'), temperature: 345 },
      { at: at('20:10'), temperature: 375 },
      ...whole.slice(3),
    ];
    const [restart, subtract] = [bake({ chart: dipped }), bake({ chart: dipped, spec: { ...spec, dips: 'subtract' } })];
    expect(restart.good).toBe(false);
    expect(restart.holdMinutes).toBeLessThan(15 * 60 + 20);
    expect(subtract.holdMinutes).toBeCloseTo(1380 - (2 * 5) / 6, 6);
  });
  it('too hot does not count either', () => {
    const hot = whole.map((one) => (one.temperature === 375 ? { ...one, temperature: 410 } : one));
    expect(bake({ chart: hot }).holdMinutes).toBeLessThan(120);
  });
  it('counts instants: a change of the clocks in between changes nothing', () => {
    const shift = 86_400_000 * 27.5;
    const moved = whole.map((one) => ({ ...one, at: one.at + shift }));
    expect(bake({ platedAt: at('08:00') + shift, startedAt: at('12:00') + shift, chart: moved }).holdMinutes).toBe(
      1380,
    );
  });
  it('never holds longer than its chart, nor longer by restarting than by subtracting', () => {
    const temperatures = fc.array(fc.integer({ min: 60, max: 450 }), { minLength: 2, maxLength: 40 });
    fc.assert(
      fc.property(temperatures, (given) => {
        const chart = given.map((temperature, index) => ({ at: index * 600_000, temperature }));
        const of = (dips: BakeSpec['dips']) =>
          judgeBake({ platedAt: 0, startedAt: 0, chart, spec: { ...spec, dips }, unitChecked: true }).holdMinutes;
        expect(of('restart')).toBeLessThanOrEqual(of('subtract') + 1e-9);
        expect(of('subtract')).toBeLessThanOrEqual((given.length - 1) * 10 + 1e-9);
      }),
    );
  });
  it('counts no minute before the parts went in, and doubts a chart that begins at another time', () => {
    const hot = whole.slice(1);
    expect(bake({ startedAt: at('12:30'), chart: hot, spec: { ...spec, startWithinMinutes: 300 } })).toMatchObject({
      ...{ good: false, holdMinutes: 1370 },
    });
    expect(bake({ startedAt: at('11:44') }).reasons).toEqual([
      'The chart begins 16 min after the bake began: is it the chart of this one?',
    ]);
    expect(bake({ startedAt: at('11:45') }).good).toBe(true);
  });
  it('read in the other scale is doubted until somebody looked at the recorder', () => {
    const celsius = whole.map((one) => ({ ...one, temperature: Math.round(((one.temperature - 32) * 5) / 9) }));
    expect(() => bake({ chart: celsius })).toThrow(/191 °C would be inside/);
    expect(bake({ chart: celsius, unitChecked: true }).reasons).toEqual([
      'Held 0 min within 350 to 400; 1380 are asked for.',
    ]);
    expect(bake({ chart: celsius, spec: { ...spec, unit: 'mV' } }).good).toBe(false);
    expect(() => bake({ chart: whole.map((one) => ({ ...one, temperature: one.temperature * 100 })) })).toThrow(
      /twenty times/,
    );
  });
  it('needs a chart that goes forward and a band', () => {
    expect(() => bake({ chart: whole.slice(0, 1) })).toThrow(/two readings/);
    expect(() => bake({ chart: [...whole].reverse() })).toThrow(/forward/);
    expect(() => bake({ spec: { ...spec, low: 400 } })).toThrow(/band/);
  });
});
