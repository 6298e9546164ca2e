import { peopleOperations } from '@hubwright/contracts/people/operations';
import { processOperations } from '@hubwright/contracts/processes/operations';
import { travelerOperations } from '@hubwright/contracts/work-orders/traveler-operations';
import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import { day } from '../support/days.ts';
import { goodValues, Job } from '../support/job.ts';
import { as } from '../support/people.ts';
import { expectRefused } from '../support/refused.ts';
import { ShopApp, type Visitor } from '../support/shop-app.ts';

describe('a shop that asks for guard bands', () => {
  let shop: ShopApp;
  let technician: Visitor;
  let inspector: Visitor;
  let job: Job;
  let step: Awaited<ReturnType<Job['nextAt']>>;
  beforeAll(async () => {
    shop = await ShopApp.open('shop');
    [technician, inspector] = [await as(shop, 'technician'), await as(shop, 'inspector')];
    job = await Job.arrived(shop, 'G3001');
    await job.tornDown();
    for (;;) {
      step = await job.nextAt('blade 1');
      if (step.title === 'Measure shank and retention') break;
      await job.sign(step);
    }
  }, 120_000);
  afterAll(() => shop.close());

  const signing = async (diameter: string) => {
    const values = goodValues(step).map((one) => {
      const name = step.measures.find(({ id }) => id === one.measureId)?.name;
      return { ...one, value: name === 'shank diameter' ? diameter : '0.128' };
    });
    return { operation: travelerOperations.signStep, input: await job.entryFor(step, values) };
  };
  const certificateSays = async (uncertainty: string) => {
    const { input } = await signing('3.8740');
    const { id, version } = await job.reads.instrument.findUniqueOrThrow({ where: { id: input.instrumentId ?? '' } });
    const dates = { calibratedOn: day(0), calibrationDueOn: day(300), inService: true, certificate: 'K-12' };
    const calibration = { instrumentId: id, ...dates, uncertainty, unit: 'in' };
    expect((await inspector.call(processOperations.calibrateInstrument, calibration, { version })).status).toBe(200);
  };

  it('accepts nothing from an instrument whose doubt is not on record', async () => {
    const administrator = await as(shop, 'administrator');
    const { version, ...profile } = (await administrator.call(peopleOperations.shop, {})).body;
    const change = { ...profile, guardBand: 'uncertainty' as const };
    expect((await administrator.call(peopleOperations.changeShop, change, { version })).status).toBe(200);
    const me = (await technician.call(peopleOperations.me, {})).body;
    expect(me.shop.guardBand).toBe('uncertainty');
    const { operation, input } = await signing('3.8740');
    const { id } = await job.reads.instrument.findUniqueOrThrow({ where: { tag: 'MIC-02' } });
    const unknown = { operation, input: { ...input, instrumentId: id } };
    await expectRefused({ shop, visitor: technician }, unknown, { status: 409, type: 'doubt-unknown' });
  });

  it('steps back from both limits by the doubt of the instrument', async () => {
    await certificateSays('0.0003');
    // The manual allows 3.8720 to 3.8760.
    const refused = await expectRefused({ shop, visitor: technician }, await signing('3.8722'), {
      ...{ status: 409, type: 'outside-limits' },
    });
    expect(refused.detail).toMatch(/limits 3.87230 to 3.87570 in/);
  });

  it('takes no reading at all from an instrument too coarse for the limits', async () => {
    await certificateSays('0.0100');
    await expectRefused({ shop, visitor: technician }, await signing('3.8740'), {
      status: 409,
      type: 'instrument-too-coarse',
    });
  });

  it('keeps in the signature what it was accepted by', async () => {
    await certificateSays('0.0003');
    const { operation, input } = await signing('3.8723');
    const signed = await technician.call(operation, input);
    expect(signed.status).toBe(200);
    const { content } = await job.reads.signOff.findUniqueOrThrow({ where: { id: signed.body.signOffId } });
    expect(JSON.parse(content)).toMatchObject({
      acceptedBy: { method: 'uncertainty', uncertainty: '0.0003', unit: 'in' },
      values: expect.arrayContaining([
        expect.objectContaining({
          name: 'shank diameter',
          limits: '3.8720 to 3.8760 in',
          accepted: '3.87230 to 3.87570 in',
        }),
      ]),
    });
  });
});
