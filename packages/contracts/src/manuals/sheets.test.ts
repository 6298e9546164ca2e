import { describe, expect, it } from '@jest/globals';
import { routeStep } from './revision.ts';

const bake = {
  kind: 'bake',
  startWithinMinutes: 240,
  low: '350',
  high: '400',
  unit: '°F',
  minimumMinutes: 1380,
  dips: 'restart',
};
const cure = {
  ...{ kind: 'cure', unit: '°F', low: '240', high: '260', minimumMinutes: 90, dips: 'restart', heatUpMost: '5' },
  ...{ coolDownMost: '5', overMinutes: 10, coolTo: '140', vacuum: { least: '22', unit: 'inHg' } },
};
const step = (process: string, sheet: object, more: object = {}) =>
  routeStep.safeParse({
    ...{ title: 'Oven', process, level: 'perform', kind: 'work', phase: 'repair', standardMinutes: 20, sheet, ...more },
  });
const faults = (read: ReturnType<typeof step>) => read.error?.issues.map(({ path }) => path.join('/')) ?? [];

describe('what a route may ask of an oven', () => {
  it('is a bake of plating, also in loads, and a cure of blade repair, part by part', () => {
    expect(faults(step('plating', bake))).toEqual([]);
    expect(faults(step('plating', bake, { batched: true }))).toEqual([]);
    expect(faults(step('blade-repair', cure))).toEqual([]);
    expect(faults(step('blade-repair', cure, { batched: true }))).toEqual(['sheet']);
    expect(faults(step('coating', cure))).toEqual(['sheet']);
    expect(faults(step('coating', bake))).toEqual(['sheet']);
  });
  it('is no band upside down, no alarm longer than the time there is, no rate of nothing', () => {
    expect(faults(step('plating', { ...bake, low: '400', high: '350' }))).toEqual(['sheet/low']);
    expect(faults(step('plating', { ...bake, alarmMinutes: 241 }))).toEqual(['sheet/alarmMinutes']);
    expect(faults(step('blade-repair', { ...cure, coolTo: '240' }))).toEqual(['sheet/coolTo']);
    expect(faults(step('blade-repair', { ...cure, heatUpMost: '0' }))).toEqual(['sheet/heatUpMost']);
    expect(faults(step('blade-repair', { ...cure, vacuum: { least: '-1', unit: 'inHg' } }))).toEqual([
      'sheet/vacuum/least',
    ]);
  });
});
