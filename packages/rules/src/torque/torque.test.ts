import { describe, expect, it } from '@jest/globals';
import fc from 'fast-check';
import {
  judgeTorque,
  missingTorque,
  passesOf,
  placesOf,
  sayTorque,
  settingBand,
  settingFor,
  type TorqueDone,
  type TorqueSpec,
  torqueAt,
} from './index.ts';

const hub = {
  ...{ name: 'hub nut', count: 4, order: [1, 3, 2, 4], low: '48', high: '54', passes: ['50', '100'] },
  ...{ threads: 'dry', retorque: true, safety: 'safety wire' },
};
const stop = {
  ...{ name: 'stop nut', count: 1, low: '28', high: '32', passes: ['100'], threads: 'dry', retorque: false },
};
const spec: TorqueSpec = { unit: 'ft-lb', lengthUnit: 'in', cycles: 10, groups: [hub, stop] };
const good = (): TorqueDone => ({
  passes: passesOf(spec).map(({ group, title, low, places }) => ({
    ...{ group: group.name, pass: title, setting: low.toFixed(), places: [...places] },
  })),
  cycled: 10,
  threads: ['hub nut', 'stop nut'],
  safetied: placesOf(hub),
});
const thrown = (code: string, message?: string | RegExp) =>
  expect.objectContaining({ name: 'RuleError', code, ...(message ? { message: expect.stringMatching(message) } : {}) });
const refused = (change: (done: TorqueDone) => TorqueDone) => {
  try {
    return judgeTorque(change(good()), spec);
  } catch (error) {
    return error;
  }
};
/** The same with one pass changed. */
const withPass = (at: number, change: Partial<TorqueDone['passes'][number]>) => (done: TorqueDone) => ({
  ...done,
  passes: done.passes.map((pass, index) => (index === at ? { ...pass, ...change } : pass)),
});

describe('torque in the sequence of the manual', () => {
  it('goes group by group, pass by pass, crosswise, and once more after cycling', () => {
    expect(passesOf(spec).map(({ group, title }) => `${group.name} ${title}`)).toEqual([
      ...['hub nut 50 %', 'hub nut 100 %', 'stop nut 100 %', 'hub nut again after cycling'],
    ]);
    expect(placesOf(hub)).toEqual(['hub nut 1', 'hub nut 3', 'hub nut 2', 'hub nut 4']);
    expect(placesOf(stop)).toEqual(['stop nut']);
    expect(judgeTorque(good(), spec)).toEqual({ good: true, reasons: [] });
  });

  it('cannot be entered out of sequence', () => {
    const swapped = ['hub nut 1', 'hub nut 2', 'hub nut 3', 'hub nut 4'];
    expect(refused(withPass(0, { places: swapped }))).toEqual(
      thrown('out-of-sequence', /hub nut 3 comes before hub nut 2 at 50 %/),
    );
    expect(refused((done) => ({ ...done, passes: done.passes.slice(1) }))).toEqual(
      thrown('out-of-sequence', /hub nut, 50 % comes before hub nut, 100 %/),
    );
    expect(refused((done) => ({ ...done, passes: [...done.passes, ...done.passes.slice(0, 1)] }))).toEqual(
      thrown('out-of-sequence', /Nothing is asked for after 4 passes/),
    );
    expect(refused(withPass(1, { places: placesOf(hub).slice(0, 2) }))).toEqual(
      thrown('out-of-sequence', /hub nut 2 is not torqued at 100 %/),
    );
  });

  it('says a missed place, pass, thread or safety by name', () => {
    expect(refused(withPass(3, { places: placesOf(hub).slice(0, 3) }))).toEqual(
      thrown('torque-missing', /hub nut 4 is not torqued at again after cycling/),
    );
    expect(refused((done) => ({ ...done, passes: done.passes.slice(0, 2) }))).toEqual(
      thrown('torque-missing', /stop nut, 100 %/),
    );
    expect(refused((done) => ({ ...done, threads: ['stop nut'] }))).toEqual(
      thrown('torque-missing', /Threads of hub nut \(dry\)/),
    );
    expect(refused((done) => ({ ...done, safetied: ['hub nut 1', 'hub nut 4'] }))).toEqual(
      thrown('torque-missing', /Not safetied with safety wire: hub nut 3, hub nut 2/),
    );
    expect(refused((done) => ({ ...done, safetied: [...done.safetied, 'stop nut'] }))).toEqual(
      thrown('out-of-sequence', /stop nut is not safetied/),
    );
  });

  it('is not torqued again before cycling was confirmed, as often as asked', () => {
    const { cycled: _, ...uncycled } = good();
    expect(refused(() => uncycled)).toEqual(thrown('not-cycled', /only after cycling 10 times/));
    expect(refused((done) => ({ ...done, cycled: 9 }))).toEqual(thrown('not-cycled'));
    expect(missingTorque({ ...uncycled, passes: uncycled.passes.slice(0, 3) }, spec)).toMatch(/cycling 10 times/);
  });

  it('is within its limits at the nut, each pass by its percent, or says what was asked for', () => {
    expect(refused(withPass(0, { setting: '27' }))).toMatchObject({ good: true });
    expect(refused(withPass(0, { setting: '27.001' }))).toMatchObject({
      reasons: ['hub nut, 50 %: the wrench was set to 27.001 ft-lb; 24.0 to 27.0 is asked for.'],
    });
    expect(refused(withPass(1, { setting: '50' }))).toMatchObject({ good: true });
  });

  it('with an adapter compares the torque at the nut, to the very limit', () => {
    // 48 × 10 / 12 = 40 and 54 × 10 / 12 = 45.
    const adapter = { lever: '10', length: '2', effect: 'longer' } as const;
    expect(refused(withPass(1, { setting: '40', adapter }))).toMatchObject({ good: true });
    expect(refused(withPass(1, { setting: '45', adapter }))).toMatchObject({ good: true });
    expect(refused(withPass(1, { setting: '48', adapter }))).toMatchObject({ good: false });
    // 48 × 10 / 8 = 60.
    const shorter = { ...adapter, effect: 'shorter' } as const;
    expect(refused(withPass(1, { setting: '60', adapter: shorter }))).toMatchObject({ good: true });
    expect(refused(withPass(1, { setting: '60', adapter: { ...shorter, length: '10' } }))).toEqual(
      thrown('bad-adapter', /before the grip/),
    );
    expect(refused(withPass(1, { setting: '60', adapter: { ...adapter, lever: '0' } }))).toEqual(thrown('bad-adapter'));
  });

  it('doubts another unit, and refuses what no wrench was set to', () => {
    expect(refused(withPass(1, { setting: '600' }))).toMatchObject({
      reasons: [expect.stringContaining('600 in-lb would be inside: look at the scale')],
    });
    expect(refused(withPass(1, { setting: '68' }))).toMatchObject({
      reasons: [expect.stringContaining('68 N-m would be inside')],
    });
    expect(refused(withPass(1, { setting: '2000' }))).toEqual(thrown('reading-impossible'));
    expect(refused(withPass(1, { setting: '-50' }))).toEqual(thrown('reading-impossible', /below zero/));
    expect(refused(withPass(1, { setting: 'fifty' }))).toEqual(thrown('not-a-number'));
  });

  it('is said whole beside the signature, each line by a name of its own', () => {
    const adapter = { lever: '10', length: '2', effect: 'longer' } as const;
    const said = sayTorque(withPass(1, { setting: '42', adapter })(good()), spec);
    expect(said).toContainEqual({
      name: 'hub nut, 100 %',
      value: 'wrench at 42 ft-lb, lever 10 in, adapter 2 in longer, 50.4 ft-lb at the nut, in the sequence 1, 3, 2, 4',
    });
    expect(new Set(said.map(({ name }) => name)).size).toBe(said.length);
  });
});

describe('the setting of a wrench with an adapter', () => {
  it('is shown rounded inwards: a setting inside as shown gives a torque inside, whatever the lengths', () => {
    const length = fc.integer({ min: 1, max: 4000 }).map((n) => (n / 100).toFixed(2));
    const torque = fc.tuple(fc.integer({ min: 1, max: 9000 }), fc.integer({ min: 0, max: 900 }));
    fc.assert(
      fc.property(length, length, torque, fc.boolean(), (lever, added, [low, more], longer) => {
        fc.pre(longer || Number(added) < Number(lever));
        const adapter = { lever, length: added, effect: longer ? ('longer' as const) : ('shorter' as const) };
        const band = { low: (low / 10).toFixed(1), high: ((low + more) / 10).toFixed(1) };
        const shown = settingBand(band, adapter, 2);
        // In exact whole numbers: setting × (lever ± adapter) against torque × lever, all in hundredths.
        const whole = (text: string) => BigInt(Math.round(Number(text) * 100));
        const arm = longer ? whole(lever) + whole(added) : whole(lever) - whole(added);
        // A band too narrow for two decimals is shown with more.
        fc.pre(/\.\d\d$/.test(shown.low));
        expect(whole(shown.low) * arm >= whole(band.low) * whole(lever)).toBe(true);
        expect((whole(shown.low) - 1n) * arm < whole(band.low) * whole(lever)).toBe(true);
        expect(whole(shown.high) * arm <= whole(band.high) * whole(lever)).toBe(true);
      }),
    );
  });
  it('there and back is the same torque', () => {
    const number = fc.integer({ min: 100, max: 99_999 }).map((n) => (n / 100).toFixed(2));
    fc.assert(
      fc.property(number, number, number, (torque, lever, length) => {
        const adapter = { lever, length, effect: 'longer' as const };
        const setting = settingFor(torque, adapter, 8);
        expect(Math.abs(Number(torqueAt(setting, adapter, 8)) - Number(torque))).toBeLessThan(1e-4);
      }),
    );
  });
});
