import type { SheetOf } from '@hubwright/contracts/manuals/sheets';
import { describe, expect, it } from '@jest/globals';
import { nextPlace, nothingTorqued, type TorqueDraft, torqueDone, torqueLeft, withPass } from './torque-draft.ts';

const spec: SheetOf<'torque'> = {
  ...{ kind: 'torque', unit: 'in-lb', lengthUnit: 'in', cycles: 5 },
  groups: [
    {
      ...{ name: 'nut', count: 2, order: [2, 1], low: '90', high: '110', passes: ['100'] },
      ...{ threads: 'dry', retorque: true, safety: 'cotter pin' },
    },
  ],
};
const said: TorqueDraft = {
  ...nothingTorqued,
  threads: ['nut'],
  adapters: { nut: { effect: 'none', lever: '', length: '' } },
};

describe('a torque sheet while it is filled in', () => {
  it('opens the next place alone, once threads and setting are there', () => {
    expect(nextPlace(nothingTorqued, spec)).toBeUndefined();
    expect(nextPlace(withPass(nothingTorqued, 0, { setting: '100' }), spec)).toBeUndefined();
    expect(nextPlace(withPass(said, 0, { setting: '100' }), spec)).toEqual({ index: 0, place: 'nut 2' });
    expect(nextPlace(withPass(said, 0, { setting: '100', places: ['nut 2'] }), spec)?.place).toBe('nut 1');
  });
  it('opens nothing again before it was cycled as often as asked', () => {
    const once = withPass(said, 0, { setting: '100', places: ['nut 2', 'nut 1'] });
    const again = withPass(once, 1, { setting: '100' });
    expect(nextPlace(again, spec)).toBeUndefined();
    expect(nextPlace({ ...again, cycled: '4' }, spec)).toBeUndefined();
    expect(nextPlace({ ...again, cycled: '5' }, spec)).toEqual({ index: 1, place: 'nut 2' });
  });
  it('says what is left by name, and nothing when all is there', () => {
    expect(torqueLeft(nothingTorqued, spec)).toMatch(/adapter is on the wrench for nut/);
    const longer = { ...said, adapters: { nut: { effect: 'longer' as const, lever: '10', length: '' } } };
    expect(torqueLeft(longer, spec)).toMatch(/adapter/);
    expect(torqueLeft(said, spec)).toMatch(/nut, 100 %: the setting/);
    const places = ['nut 2', 'nut 1'];
    const torqued = withPass(withPass(said, 0, { setting: '100', places }), 1, { setting: '100', places });
    expect(torqueLeft(torqued, spec)).toMatch(/cycling 5 times/);
    expect(torqueLeft({ ...torqued, cycled: '5' }, spec)).toBe('Not safetied with cotter pin: nut 2, nut 1');
    expect(torqueLeft({ ...torqued, cycled: '5', safetied: places }, spec)).toBe('');
  });
  it('gives the rule no more than was begun', () => {
    expect(torqueDone(said, spec).passes).toEqual([]);
    expect(torqueDone(withPass(said, 0, { setting: '100' }), spec).passes).toEqual([
      { group: 'nut', pass: '100 %', setting: '100', places: [] },
    ]);
  });
});
