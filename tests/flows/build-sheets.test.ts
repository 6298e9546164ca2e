import type { SheetOf } from '@hubwright/contracts/manuals/sheets';
import type { EntryOf } from '@hubwright/contracts/work-orders/sheet-entries';
import { travelerOperations } from '@hubwright/contracts/work-orders/traveler-operations';
import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import { chargeCylinder } from '../../seed/data/manuals/quillon-4-blade.ts';
import { shimBladeRoots } from '../../seed/data/manuals/sablewing-5-blade.ts';
import { greased, nuts, torqued } from '../../seed/data/manuals/shapes.ts';
import { usualCharge, usualFit, usualTorque } from '../../seed/usual-build-sheets.ts';
import type { Job } from '../support/job.ts';
import { jobWithSteps } from '../support/job-with-steps.ts';
import { as } from '../support/people.ts';
import { expectRefused } from '../support/refused.ts';
import { ShopApp, type Visitor } from '../support/shop-app.ts';

const { signStep, traveler } = travelerOperations;
const torque = torqued('Torque clamp nuts', 20, {
  unit: 'in-lb',
  groups: [nuts('clamp nut', 4, { low: '290', high: '310', order: [1, 3, 2, 4], safety: 'cotter pin' })],
});

describe('torque, charge and shims at the bench', () => {
  let shop: ShopApp;
  let technician: Visitor;
  let job: Job;
  beforeAll(async () => {
    shop = await ShopApp.open('shop');
    technician = await as(shop, 'technician');
    job = await jobWithSteps(shop, 'T5001', [torque, greased(1, '40.0', '44.0'), chargeCylinder, shimBladeRoots]);
  }, 120_000);
  afterAll(() => shop.close());

  type Entry = Awaited<ReturnType<Job['entryFor']>>;
  const entryAt = async () => job.entryFor(await job.nextAt('blade 1'));
  const refused = (input: Record<string, unknown>, type: string, status: number, pointer?: string) =>
    expectRefused(
      { shop, visitor: technician },
      { operation: signStep, input },
      { status, type, ...(pointer ? { pointer } : {}) },
    );
  /** Signed, and what the traveler says about it. */
  async function said(entry: Entry) {
    const signed = await technician.call(signStep, entry);
    expect(signed.status).toBe(200);
    const { steps } = (await technician.call(traveler, { travelerId: signed.body.travelerId })).body;
    return steps.find(({ id }) => id === entry.stepId)?.signOffs[0]?.sheet;
  }

  it('nothing is torqued out of sequence, and what was missed is said by name', async () => {
    const entry = await entryAt();
    const spec = torque.sheet as SheetOf<'torque'>;
    const good = usualTorque(spec);
    const change = (at: number, more: Partial<EntryOf<'torque'>['passes'][number]>) => ({
      ...good,
      passes: good.passes.map((pass, index) => (index === at ? { ...pass, ...more } : pass)),
    });
    const wrong = async (sheet: object, words: string, pointer = '/sheet/passes') => {
      const { detail } = await refused({ ...entry, sheet }, 'sheet-wrong', 422, pointer);
      expect(detail).toContain(words);
    };
    const byNumber = [1, 2, 3, 4].map((n) => `clamp nut ${n}`);
    await wrong(change(1, { places: byNumber }), 'clamp nut 3 comes before clamp nut 2', '/sheet/passes/1');
    await wrong({ ...good, passes: good.passes.slice(0, 2) }, 'clamp nut, again after cycling');
    await wrong(change(2, { places: good.passes[2]?.places.slice(0, 3) ?? [] }), 'clamp nut 4 is not torqued');
    const { cycled: _, ...uncycled } = good;
    await wrong(uncycled, 'only after cycling 10 times', '/sheet/passes/2');
    await wrong({ ...good, safetied: ['clamp nut 1'] }, 'Not safetied with cotter pin: clamp nut 3, clamp nut 2');
    await wrong({ ...good, threads: [] }, 'Threads of clamp nut (dry)');
  });

  it('a wrench set as if there were no adapter is never signed as good; one set for it is kept whole', async () => {
    const entry = await entryAt();
    const good = usualTorque(torque.sheet as SheetOf<'torque'>);
    const adapter = { lever: '10', length: '2.5', effect: 'longer' } as const;
    const withAdapter = (settings: readonly string[]) => ({
      ...good,
      passes: good.passes.map((pass, index) => ({ ...pass, adapter, setting: settings[index] ?? '' })),
    });
    const { detail } = await refused({ ...entry, sheet: withAdapter(['120', '300', '240']) }, 'outside-limits', 409);
    expect(detail).toContain('clamp nut, 100 %: the wrench was set to 300 in-lb; 232.0 to 248.0 is asked for.');
    const feet = withAdapter(['120', '20', '240']);
    expect((await refused({ ...entry, sheet: feet }, 'outside-limits', 409)).detail).toContain(
      '20 ft-lb would be inside',
    );
    const sheet = await said({ ...entry, sheet: withAdapter(['120', '232', '248']) });
    expect(sheet?.said).toContainEqual({
      name: 'clamp nut, 100 %',
      value:
        'wrench at 232 in-lb, lever 10 in, adapter 2.5 in longer, 290.0 in-lb at the nut, in the sequence 1, 3, 2, 4',
    });
    expect(sheet?.reasons).toEqual([]);
  });

  it('grease is of the one type the manual names, by its lot, and weighed within limits', async () => {
    const entry = await entryAt();
    const other = await job.reads.part.findUniqueOrThrow({ where: { number: 'LM-AS1' } });
    const wrong = await job.reads.lot.findUniqueOrThrow({ where: { code: await job.onShelf(other.id, 5) } });
    await refused({ ...entry, lotIds: [] }, 'material-missing', 422, '/lotIds');
    await refused({ ...entry, lotIds: [...(entry.lotIds ?? []), wrong.id] }, 'material-wrong', 409);
    const values = entry.values.map((value) => ({ ...value, value: '44.1' }));
    await refused({ ...entry, values }, 'outside-limits', 409);
    await said(entry);
  });

  it('a charge goes by its temperature, never beyond the table', async () => {
    const entry = await entryAt();
    const good = usualCharge(chargeCylinder.sheet as SheetOf<'charge'>);
    const not = (more: object, type: string, status: number, pointer?: string) =>
      refused({ ...entry, sheet: { ...good, ...more } }, type, status, pointer);
    const cold = await not({ temperature: '21' }, 'sheet-wrong', 422, '/sheet/temperature');
    expect(cold.detail).toContain('21 °C would be inside');
    await not({ pressure: '1800' }, 'sheet-wrong', 422, '/sheet/pressure');
    const kilopascals = await not({ pressure: '538' }, 'outside-limits', 409);
    expect(kilopascals.detail).toContain('538 kPa would be inside: look at the unit of the gauge');
    await not({ medium: 'dry air' }, 'outside-limits', 409);
    await not({ settledMinutes: '10' }, 'outside-limits', 409);
    await not({ medium: 'oxygen' }, 'invalid-input', 422);
    const sheet = await said({ ...entry, sheet: { ...good, temperature: '65', pressure: '79' } });
    expect(sheet?.said).toContainEqual({ name: 'pressure by the table', value: '77.0 ± 2 psi' });
  });

  it('shims are whole ones that make the pack measured for, and the trial decides', async () => {
    const entry = await entryAt();
    const good = usualFit(shimBladeRoots.sheet as SheetOf<'fit'>);
    const at = (more: Partial<EntryOf<'fit'>['places'][number]>) => ({
      ...entry,
      sheet: { ...good, places: good.places.map((place, index) => (index === 1 ? { ...place, ...more } : place)) },
    });
    const none = await refused(at({ trial: '80' }), 'outside-limits', 409);
    expect(none.detail).toContain('blade 2: torque to turn the blade is 80 in-lb; 40 to 70 is asked for.');
    await refused(at({ shims: [{ thickness: '0.010', pieces: 2 }] }), 'outside-limits', 409);
    await refused(at({ shims: [{ thickness: '0.004', pieces: 1 }] }), 'sheet-wrong', 422);
    const short = { ...entry, sheet: { ...good, places: good.places.slice(0, 4) } };
    expect((await refused(short, 'sheet-wrong', 422)).detail).toContain('blade 5: socket depth is not measured');
    const sheet = await said({ ...entry, sheet: good });
    expect(sheet?.said).toContainEqual({
      name: 'blade 2, shims',
      value: '2 × 0.010 + 1 × 0.005 = 0.025 in (S-SHIM-10, S-SHIM-05); 0.0235 to 0.0255 wanted',
    });
  });

  it('a revision that asks for nonsense is refused', async () => {
    const broken = { ...torque, instrumentKind: 'caliper' as const };
    await expect(jobWithSteps(shop, 'T5002', [broken])).rejects.toMatchObject({ type: 'invalid-input' });
    const twice = { ...torque.sheet, cycles: 0 } as SheetOf<'torque'>;
    await expect(jobWithSteps(shop, 'T5003', [{ ...torque, sheet: twice }])).rejects.toMatchObject({
      type: 'invalid-input',
    });
    const { caution: _, ...silent } = chargeCylinder;
    await expect(jobWithSteps(shop, 'T5004', [silent])).rejects.toMatchObject({ type: 'invalid-input' });
  });
});
