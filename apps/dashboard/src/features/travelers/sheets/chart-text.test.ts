import { describe, expect, it } from '@jest/globals';
import { bakeForm } from './bake-form.ts';
import { chartFrom, unitDoubt } from './chart-text.ts';

describe('a chart as it is written down', () => {
  const chart = '2026-03-01 12:20 350\n2026-03-02, 11:20, 349.5';
  it('is readings of date, time and temperature, and vacuum where there is one', () => {
    expect(chartFrom(chart)?.map(({ temperature }) => temperature)).toEqual(['350', '349.5']);
    expect(chartFrom('2026-03-01 12:20\t250  25.5')).toEqual([
      { at: new Date('2026-03-01T12:20').toISOString(), temperature: '250', vacuum: '25.5' },
    ]);
    expect(chartFrom('')).toEqual([]);
  });
  it('is none while a line says something else', () => {
    expect(chartFrom('12:20 350')).toBeNull();
    expect(chartFrom(`${chart}\nhot`)).toBeNull();
    expect(chartFrom('2026-13-01 12:20 350')).toBeNull();
  });
  it('has its unit doubted', () => {
    const band = { low: '350', high: '400', unit: '°F' };
    expect(unitDoubt(chartFrom('2026-03-01 12:20 20\n2026-03-01 13:20 190') ?? [], band)).toMatch(/190 °C/);
    expect(unitDoubt(chartFrom(chart) ?? [], band)).toBeUndefined();
  });
});

describe('a bake as it is written down', () => {
  const chart = '2026-03-01 12:20 350\n2026-03-02 11:20 350';
  const about = (begun: object | null) => ({ step: { bake: { begun } } }) as never;
  it('says when it began, unless that is on record', () => {
    const draft = { startedAt: '2026-03-01T12:00', chart, unitChecked: false };
    expect(bakeForm.entryOf(draft, about(null))).toMatchObject({
      startedAt: new Date('2026-03-01T12:00').toISOString(),
    });
    expect(bakeForm.entryOf(draft, about({ at: 'then' }))).not.toHaveProperty('startedAt');
    expect(bakeForm.entryOf({ ...draft, startedAt: '' }, about(null))).toBeUndefined();
    expect(bakeForm.entryOf({ ...draft, chart: chart.slice(0, 20) }, about({ at: 'then' }))).toBeUndefined();
  });
});
