import { mediaOperations as op } from '@hubwright/contracts/peening/media-operations';
import { peeningOperations } from '@hubwright/contracts/peening/operations';
import { releaseOperations } from '@hubwright/contracts/releases/operations';
import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import { bladeProgram, goodCheck, shot } from '../../seed/data/peening.ts';
import { fourBlade } from '../support/arrivals.ts';
import { Job } from '../support/job.ts';
import { MovedClock } from '../support/moved-clock.ts';
import { as, pin } from '../support/people.ts';
import { readPdf } from '../support/read-pdf.ts';
import { expectRefused } from '../support/refused.ts';
import { ShopApp, type Visitor } from '../support/shop-app.ts';

const strip = (area: string, before: string, after: string) => ({ area, before, after, batch: 'A-1182' });
const good = [
  strip('leading edge', '0.0002', '0.0097'),
  strip('trailing edge', '-0.0001', '0.0074'),
  strip('shank', '0.0000', '0.0105'),
];
const day = 86_400;

describe('media of a peening machine', () => {
  const clock = new MovedClock();
  let shop: ShopApp;
  let inspector: Visitor;
  let technician: Visitor;
  let one: Job;
  let two: Job;
  let released: string;
  beforeAll(async () => {
    shop = await ShopApp.open('shop', { clock });
    const arrive = async (serial: string, blades: number) => {
      const whole = await fourBlade(shop, serial);
      const job = await Job.arrived(shop, serial, {
        ...whole,
        parts: whole.parts?.filter(({ kind }) => kind !== 'clamp') ?? [],
      });
      await job.inWork();
      for (let blade = 1; blade <= blades; blade += 1)
        for (;;) {
          const step = await job.nextAt(`blade ${blade}`);
          if (step.peening !== null) break;
          await job.sign(step);
        }
      return job;
    };
    one = await arrive('P5001', 3);
    two = await arrive('P5002', 2);
  }, 180_000);
  afterAll(() => shop.close());
  // Whoever was signed in days ago is asked again.
  const signIn = async () => {
    [inspector, technician] = [await as(shop, 'inspector'), await as(shop, 'technician')];
  };

  const stepOf = async (job: Job, blade: number) => (await job.nextAt(`blade ${blade}`)).id;
  const machine = async () => (await inspector.call(peeningOperations.listPeeningMachines, {})).body.rows[0];
  const media = async () => (await inspector.call(op.listPeeningMedia, {})).body.rows[0];
  const reviews = async () => (await inspector.call(op.listMediaReviews, {})).body.rows;
  const checking = async (changes: object = {}) => {
    const { id: mediaId = '', version = 0 } = (await media()) ?? {};
    return {
      operation: op.checkPeeningMedia,
      input: { mediaId, ...goodCheck(), signature: pin, ...changes },
      options: { version },
    };
  };
  const check = async (changes: object = {}) => {
    const { operation, input, options } = await checking(changes);
    return technician.call(operation, input, options);
  };
  const starting = async (stepIds: string[], changes: object = {}) => {
    const setupId = (await machine())?.setups.find(({ isCurrent }) => isCurrent)?.id ?? '';
    const looked = { nozzlesChecked: true as const, mediaChecked: true as const, signature: pin };
    return {
      operation: peeningOperations.startPeeningLot,
      input: { setupId, stepIds, opening: good, ...looked, ...changes },
    };
  };
  const refused = async (request: Parameters<typeof expectRefused>[1], type: string, status = 409, pointer?: string) =>
    expectRefused({ shop, visitor: technician }, request, { status, type, ...(pointer ? { pointer } : {}) });
  const releaseItems = async (job: Job) =>
    (await inspector.call(releaseOperations.releaseChecklist, { workOrderId: job.id })).body.open.map(
      ({ what }) => what,
    );
  const coverage = good.map(({ area }) => ({ area, percent: 100 }));
  const pdf = async (path: string) => {
    const answer = await fetch(`${shop.address}${path}`, { headers: { cookie: technician.cookie } });
    expect([answer.status, answer.headers.get('content-type')]).toEqual([200, 'application/pdf']);
    return readPdf(Buffer.from(await answer.arrayBuffer()));
  };

  it('overdue for its check, begins no lot and qualifies nothing until it is found good', async () => {
    clock.seconds = 12 * day;
    await signIn();
    expect((await machine())?.media).toMatchObject({ code: 'SH-2214', state: 'overdue' });
    await refused(await starting([await stepOf(one, 1)]), 'media-overdue');
    const { id: machineId = '', version = 0 } = (await machine()) ?? {};
    const qualifying = { ...bladeProgram, machineId, signature: pin };
    await expectRefused(
      { shop, visitor: inspector },
      { operation: peeningOperations.qualifySetup, input: qualifying, options: { version } },
      { status: 409, type: 'media-overdue' },
    );
    await refused(await checking({ sieves: goodCheck().sieves.slice(1) }), 'sieves-missing', 422, '/sieves');
    const { body } = await check();
    expect([body.passed, body.doubtful]).toEqual([true, []]);
    expect((await media())?.state).toBe('good');
  });

  it('is named by the lot; strips carry both readings, and one that was bowed proves nothing', async () => {
    const bowed = [strip('leading edge', '0.0011', '0.0106'), ...good.slice(1)];
    const stepIds = [await stepOf(one, 1), await stepOf(one, 2), await stepOf(two, 1)];
    await refused(await starting(stepIds, { opening: bowed }), 'strip-bowed', 409, '/opening/0/before');
    const half = [{ area: 'leading edge', before: '0.0001' }, ...good.slice(1)];
    await refused(await starting(stepIds, { opening: half }), 'invalid-input', 422, '/opening/0/after');
    const { operation, input } = await starting(stepIds);
    const begun = await technician.call(operation, input);
    expect(begun.status).toBe(200);
    released = begun.body.id;
    const named = { lotId: released, signature: pin };
    const signed = await technician.call(peeningOperations.signPeeningLot, { ...named, coverage }, { version: 1 });
    const closing = good.map(({ area, before, after }) => ({ area, before, after }));
    const { version } = signed.body;
    const closed = await technician.call(peeningOperations.closePeeningLot, { ...named, closing }, { version });
    expect(closed.body.state).toBe('released');
    const [lot] = (await inspector.call(peeningOperations.listPeeningLots, { show: 'all' })).body.rows;
    expect(lot).toMatchObject({
      mediaLot: 'SH-2214',
      opening: [{ ...good[0], arcHeight: '0.0095' }, ...good.slice(1)],
    });
    expect(lot?.signedAt).toMatch(/Z$/);
  });

  it('failing a check, puts every lot since the last good one before an inspector and keeps their units', async () => {
    const { operation, input: lastOne } = await starting([await stepOf(one, 3)]);
    const third = await technician.call(operation, lastOne);
    expect(third.status).toBe(200);
    const { body } = await check({ broken: 31 });
    expect(body).toMatchObject({ passed: false, reasons: ['31 broken or deformed in the field, 12 allowed.'] });
    expect(body.doubtful.map(({ lot, workOrder, parts }) => [lot, workOrder, parts.length])).toEqual([
      ['PL-0001', one.number, 2],
      ['PL-0001', two.number, 1],
      ['PL-0002', one.number, 1],
    ]);
    const doubt = 'Peening lot PL-0001: media SH-2214 then failed its check; nobody decided yet';
    expect([await releaseItems(one), await releaseItems(two)]).toEqual([
      expect.arrayContaining([doubt]),
      expect.arrayContaining([doubt]),
    ]);
    // Nothing is begun, and nothing that was begun is signed.
    await refused(await starting([await stepOf(two, 2)]), 'media-failed');
    const lotId = third.body.id;
    const input = { lotId, coverage, signature: pin };
    await refused({ operation: peeningOperations.signPeeningLot, input, options: { version: 1 } }, 'media-failed');
    // A second failed check lists nothing twice.
    expect((await check({ broken: 40 })).body.doubtful).toEqual([]);
    const unfinished = (await reviews()).find(({ lot }) => lot.id === lotId);
    const decision = { reviewId: unfinished?.id ?? '', decision: 'stands', reason: 'seen', signature: pin };
    const deciding = { operation: op.decideMediaReview, input: decision, options: { version: 1 } };
    await expectRefused({ shop, visitor: inspector }, deciding, { status: 409, type: 'lot-unfinished' });
    const broken = { lotId, reason: 'Media failed' };
    expect((await technician.call(peeningOperations.breakUpPeeningLot, broken, { version: 1 })).status).toBe(200);
    expect((await reviews()).map(({ lot }) => lot.number)).toEqual(['PL-0001', 'PL-0001']);
  });

  it('is answered unit by unit: it stands, or the parts are peened again', async () => {
    const decide = async (job: Job, decision: string) => {
      const review = (await reviews()).find(({ workOrder }) => workOrder.id === job.id);
      const input = { reviewId: review?.id ?? '', decision, reason: 'Strips within the band', signature: pin };
      return { operation: op.decideMediaReview, input, options: { version: review?.version ?? 0 } };
    };
    await refused(await decide(one, 'stands'), 'not-permitted', 403);
    const told = await decide(one, 'customer-told');
    await expectRefused({ shop, visitor: inspector }, told, { status: 409, type: 'unit-not-released' });
    const stands = await decide(one, 'stands');
    expect((await inspector.call(stands.operation, stands.input as never, stands.options)).status).toBe(200);
    const again = await decide(two, 'peen-again');
    expect((await inspector.call(again.operation, again.input as never, again.options)).status).toBe(200);
    await expectRefused({ shop, visitor: inspector }, again, { status: 412, type: 'out-of-date' });
    expect(await reviews()).toEqual([]);
    expect((await two.nextAt('blade 1')).title).toBe('Peen edges and shank, again after PL-0001');
    expect((await one.nextAt('blade 1')).title).toBe('Anodise');
    for (const job of [one, two])
      expect(await releaseItems(job)).not.toContainEqual(expect.stringContaining('failed its check'));
  });

  it('prints the lot with its media, strips, curve, parts and what was decided, and the program with its curve', async () => {
    const { text, title } = await pdf(`/api/peening/lots/${released}/pdf`);
    expect(title).toBe('Peening lot PL-0001');
    for (const part of [
      'PEEN-01, Air-blast cabinet',
      'air pressure 38 psi',
      'S170, lot SH-2214',
      'good, Jory Penhallow',
      'leading edge: 0.0080 to 0.0110 in A',
      'opening 0.0002 0.0097 0.0095 A-1182',
      'closing -0.0001 0.0074 0.0075',
      '12, 24, 36',
      '100 %; 100 % asked for',
      'Saturation time',
      `${two.number} blade 1`,
      'Closing strips Jory Penhallow',
      'stands, Strips within the band',
      'peen again, Strips within the band',
    ])
      expect(text).toContain(part);
    const setup = (await machine())?.setups.find(({ isCurrent }) => isCurrent);
    const paper = await pdf(`/api/peening/setups/${setup?.id}/pdf`);
    expect(paper.title).toBe('Peening program blades 84 in');
    for (const { strips, intensity } of setup?.areas ?? []) {
      for (const { time, arcHeight } of strips) expect(paper.text).toContain(`${time} ${arcHeight}`);
      expect(paper.text).toContain(intensity.toFixed(5));
    }
  });

  it('is taken out; the next is checked before anything is begun, and by hours where it says so', async () => {
    const { id: mediaId = '', version = 0 } = (await media()) ?? {};
    const { id: machineId = '' } = (await machine()) ?? {};
    const next = { ...shot, machineId, code: 'SH-2300', everyHours: '8' };
    await refused({ operation: op.addPeeningMedia, input: next }, 'media-in');
    const out = { mediaId, reason: 'Broken down' };
    expect((await technician.call(op.takeOutPeeningMedia, out, { version })).status).toBe(200);
    await refused(await starting([await stepOf(one, 3)]), 'media-missing');
    await refused(
      { operation: op.addPeeningMedia, input: { ...next, code: 'SH-2214' } },
      'invalid-input',
      422,
      '/code',
    );
    expect((await technician.call(op.addPeeningMedia, next)).status).toBe(200);
    await refused(await starting([await stepOf(one, 3)]), 'media-unchecked');
    await refused(await checking(), 'meter-missing', 422, '/meterHours');
    expect((await check({ meterHours: '120.0' })).body.passed).toBe(true);
    await refused(await starting([await stepOf(one, 3)]), 'meter-missing', 422, '/meterHours');
    await refused(await starting([await stepOf(one, 3)], { meterHours: '119.0' }), 'meter-back', 422, '/meterHours');
    await refused(await starting([await stepOf(one, 3)], { meterHours: '128.1' }), 'media-overdue');
    const { operation, input } = await starting([await stepOf(one, 3)], { meterHours: '128.0' });
    expect((await technician.call(operation, input)).status).toBe(200);
    expect((await machine())?.media).toMatchObject({ state: 'good', dueAtHours: 128 });
  });
});
