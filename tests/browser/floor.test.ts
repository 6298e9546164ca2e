// size: one story told in order; each step stands on the one before
import { afterAll, beforeAll, describe, expect, test } from '@jest/globals';
import type { Browser, Page } from 'playwright-core';
import { takeOut } from '../../apps/server/src/modules/kits/take-out.command.ts';
import { closeBuild } from '../../apps/server/src/modules/work-orders/close-build.command.ts';
import { demoPin } from '../../seed/data/people.ts';
import { readsOf } from '../support/arrivals.ts';
import { openBrowser } from '../support/browser.ts';
import { goodValues, Job } from '../support/job.ts';
import { jpeg } from '../support/pictures.ts';
import { ShopApp } from '../support/shop-app.ts';
import { accessibilityFaults, builtDashboard, pageOf, picture, scan, until } from '../support/view-page.ts';

const slow = { timeout: 20_000 };
const measureTitle = 'Measure blade by station';

/** A propeller built whole, of which one clamp washer then lies in the tray again and the pitch return spring in the rack. */
async function almostClosed(shop: ShopApp): Promise<{ job: Job; washer: string; spring: string }> {
  const job = await Job.arrived(shop, '4602');
  await job.inWork();
  await job.signed('repair');
  await job.takenOff();
  await job.signed('build');
  await job.filled();
  const out = async (position: string) => {
    const line = await job.reads.kitLine.findFirstOrThrow({ where: { kitId: job.kitId, position } });
    const { lot } = await job.reads.movement.findFirstOrThrow({
      where: { kitLineId: line.id, toKind: 'unit', fromKind: { in: ['tray', 'rack'] } },
      include: { lot: true },
    });
    const input = { kitId: job.kitId, lineId: line.id, lotCode: lot.code, quantity: 1, reason: 'fell out' };
    await shop.run(takeOut, { ...input, to: 'back' }, job.people.technician);
    return lot.code;
  };
  return { job, washer: await out('blade 1 clamp washers'), spring: await out('pitch return spring') };
}

/** A governor that waits for nothing but its release. */
async function finallyInspected(shop: ShopApp): Promise<Job> {
  const model = await readsOf(shop).unitModel.findFirstOrThrow({
    where: { designation: 'VG14' },
    include: { applications: { where: { airframe: 'Heronby Courser 4' } } },
  });
  const applicationId = model.applications[0]?.id ?? '';
  const job = await Job.arrived(shop, 'VG4603', { modelId: model.id, applicationId, parts: [], scope: 'governor' });
  await job.inWork();
  await job.signed('repair');
  await job.takenOff();
  await job.signed('build');
  await job.filled();
  await shop.run(closeBuild, { workOrderId: job.id, signature: { pin: demoPin } }, job.people.technician);
  await job.signed('final');
  return job;
}

describe('a day on the floor', () => {
  let shop: ShopApp;
  let browser: Browser;
  let technician: Page;
  let inspector: Page;
  let job: Job;

  beforeAll(async () => {
    shop = await ShopApp.open('shop', { dashboardFolder: builtDashboard });
    job = await Job.arrived(shop, '4601');
    await job.approved('estimate');
    browser = await openBrowser();
    technician = await pageOf(browser, shop, { signInName: 'tech' });
    inspector = await pageOf(browser, shop, { signInName: 'inspector' });
  }, 180_000);
  afterAll(async () => {
    await browser?.close();
    await shop?.close();
  });

  /** No accessibility fault, and a picture kept. From the top: what lies half under the head that stays is no small target. */
  async function looksRight(page: Page, name: string) {
    await page.evaluate('scrollTo(0, 0)');
    expect(await accessibilityFaults(page)).toEqual([]);
    await picture(page, `floor-${name}`);
  }
  const press = (name: string | RegExp, page = technician) => page.getByRole('button', { name }).first().click(slow);
  async function choose(label: RegExp, option: RegExp, page = technician) {
    await page.getByRole('button', { name: label }).click(slow);
    await page.getByRole('option', { name: option }).first().click(slow);
  }
  async function sign(page = technician) {
    await page.getByLabel('Your PIN').fill(demoPin);
    await page.getByRole('button', { name: /^Sign as/ }).click();
  }
  /** The blade travelers whose turn is to be measured. */
  const toMeasure = async () => (await job.nextSteps()).filter(({ title }) => title === measureTitle);
  /** Types values as a caliper does: the reading, then Enter, which goes on to the next box, whichever measure that is. */
  async function enter(values: readonly { value: string }[], label: string) {
    await technician.getByLabel(label, { exact: true }).focus();
    for (const _ of values) {
      const name = await technician.evaluate<string>('document.activeElement.name');
      await technician.keyboard.type(values[Number(/\d+/.exec(name)?.[0])]?.value ?? '');
      await technician.keyboard.press('Enter');
    }
  }

  test('the technician lands on the bench, finds the unit and begins the teardown once energy is said to be released', async () => {
    await technician.getByRole('heading', { name: 'What is mine, and is my tray empty?' }).waitFor(slow);
    await technician.getByText('Nothing waits for your signature').waitFor(slow);
    await technician.getByRole('tab', { name: 'Units' }).click();
    await technician.getByRole('link', { name: job.number }).click(slow);
    await press('Begin teardown');
    const dialog = technician.getByRole('dialog');
    await dialog.getByText('store energy that maims').waitFor(slow);
    await dialog.getByRole('button', { name: 'Begin teardown' }).click();
    await dialog
      .getByText(/charge and spring energy were released/i)
      .first()
      .waitFor(slow);
    expect((await job.workOrder()).stage).toBe('received');
    await dialog.getByRole('checkbox').check({ force: true });
    await dialog.getByRole('button', { name: 'Begin teardown' }).click();
    await technician.getByText(/travelers raised/).waitFor(slow);
    expect((await job.workOrder()).stage).toBe('teardown');
  }, 90_000);

  test('what came off goes into the rack', async () => {
    await press('Put what came off in the rack');
    await looksRight(technician, 'take-off');
    await press('Put it all in the rack');
    await technician.getByRole('list', { name: 'In the rack, lot by lot' }).getByText('Q301-51').waitFor(slow);
    await looksRight(technician, 'build-in-teardown');
  }, 90_000);

  test('a value outside its limits becomes a finding, signed as measured; nothing is filled in beforehand', async () => {
    for (let steps = await job.nextSteps(); (await toMeasure()).length < 3; steps = await job.nextSteps())
      for (const step of steps)
        if (step.traveler.partClass === 'blade' && step.title !== measureTitle) await job.sign(step);
    const [step] = await toMeasure();
    if (!step) throw new Error('No blade waits to be measured');
    await technician.goto('/bench');
    await technician.getByRole('link', { name: measureTitle }).first().waitFor(slow);
    await technician.goto(`/travelers/${step.travelerId}`);
    await technician.getByLabel('width at 18 in').waitFor(slow);
    const boxes = await technician.locator('input[inputmode="decimal"]').all();
    expect(boxes).toHaveLength(step.measures.length);
    for (const box of boxes) expect(await box.inputValue()).toBe('');
    await enter([{ value: '5.9' }, ...goodValues(step).slice(1)], 'width at 18 in');
    await technician.getByText('outside', { exact: true }).waitFor(slow);
    await choose(/Instrument used/, /calibrated until/);
    await looksRight(technician, 'measured');
    await press(/Outside the limits/);
    await press('Go on to sign');
    await technician.getByText('Nothing was sent yet.').waitFor(slow);
    await choose(/Where on the part$/, /Leading edge/);
    await technician.getByLabel('Exactly where').fill('station 18, leading edge');
    await technician.getByLabel('What you see').fill('narrow after an old repair');
    await press('Go on to sign');
    await technician.getByRole('alertdialog').getByText('5.9', { exact: true }).waitFor(slow);
    await looksRight(technician, 'sign-outside');
    await sign();
    await technician.getByText(/Finding F-0001 is raised/).waitFor(slow);
    expect(await job.reads.finding.count({ where: { workOrderId: job.id } })).toBe(1);
  }, 120_000);

  test('a good blade is signed with initials; a wrong sign-off is corrected and both stay', async () => {
    const [step] = await toMeasure();
    if (!step) throw new Error('No blade waits to be measured');
    await technician.goto(`/travelers/${step.travelerId}`);
    await enter(goodValues(step), 'width at 18 in');
    await choose(/Instrument used/, /calibrated until/);
    await press('Done and good: sign');
    await sign();
    await technician.getByText(`“${measureTitle}” is signed.`).waitFor(slow);
    await technician.goto(`/travelers/${step.travelerId}?step=${step.id}`);
    await press('This was signed wrongly: correct it');
    await technician.getByLabel('What was wrong with it').fill('read the wrong blade');
    await enter(goodValues(step), 'width at 18 in');
    await choose(/Instrument used/, /calibrated until/);
    await press('Go on to sign');
    await sign();
    await technician.getByText('corrected since').waitFor(slow);
    expect(await technician.getByText(/“I did or inspected this step|“Corrects an earlier sign-off/).count()).toBe(2);
    await looksRight(technician, 'corrected');
    await technician.emulateMedia({ media: 'print' });
    await technician.getByText('Not signed yet.').first().waitFor(slow);
    expect(await technician.getByRole('heading', { level: 3 }).count()).toBeGreaterThan(3);
    expect(await technician.getByRole('button', { name: /correct it/ }).count()).toBe(0);
    await picture(technician, 'floor-printed-traveler');
    await technician.emulateMedia({ media: 'screen' });
  }, 120_000);

  test('the technician photographs the finding; who cannot see the picture is told what it shows', async () => {
    await technician.goto('/findings?show=undecided');
    await technician.getByText('F-0001').first().click(slow);
    const bytes = await jpeg(1_600, 1_200);
    const choosing = technician.waitForEvent('filechooser');
    await press('Take a photo');
    await (await choosing).setFiles({ name: '../../blade 1.jpg', mimeType: 'image/jpeg', buffer: bytes });
    const dialog = technician.getByRole('dialog');
    await dialog.getByAltText('As chosen, not sent yet').waitFor(slow);
    await dialog.getByRole('button', { name: 'Put on record' }).click();
    await dialog.getByText('What it shows: Say what it shows').waitFor(slow);
    await dialog.getByLabel('What it shows').fill('Blade 1 at 18 in, narrower than the gauge');
    await looksRight(technician, 'photo-chosen');
    // The network is lost once: the same request goes out again by itself, under the same key.
    const keys: (string | undefined)[] = [];
    await technician.route('**/api/files', (route) => {
      keys.push(route.request().headers()['idempotency-key']);
      return keys.length === 1 ? route.abort() : route.continue();
    });
    await dialog.getByRole('button', { name: 'Put on record' }).click();
    await technician.getByText('The photo is on record.').waitFor(slow);
    await technician.getByAltText('Blade 1 at 18 in, narrower than the gauge').waitFor(slow);
    await technician.unroute('**/api/files');
    expect(keys).toEqual([keys[0], keys[0]]);
    expect(await readsOf(shop).photo.count()).toBe(1);
  }, 120_000);

  test('a file that is no picture is refused with what to do, and the inspector sees the photo large', async () => {
    const choosing = technician.waitForEvent('filechooser');
    await press('Choose a file');
    await (await choosing).setFiles({ name: 'blade.jpg', mimeType: 'image/jpeg', buffer: Buffer.from('<html>') });
    const dialog = technician.getByRole('dialog');
    await dialog.getByLabel('What it shows').fill('Not a picture at all');
    await dialog.getByRole('button', { name: 'Put on record' }).click();
    await dialog.getByText('This device cannot show the file.').waitFor(slow);
    await dialog.getByText('This kind of file is not kept here').waitFor(slow);
    await looksRight(technician, 'photo-refused');
    await technician.keyboard.press('Escape');
    await inspector.goto('/findings?show=undecided');
    await inspector.getByText('F-0001').first().click(slow);
    await inspector.getByAltText(/narrower than the gauge/).waitFor(slow);
    await looksRight(inspector, 'photo-strip');
    await inspector.getByRole('button', { name: /narrower than the gauge/ }).focus();
    await inspector.keyboard.press('Enter');
    await inspector.getByRole('heading', { name: 'Photo 1 of 1' }).waitFor(slow);
    await until(
      inspector,
      '[...document.querySelectorAll("[role=dialog] img")].every((img) => img.naturalWidth === 1600)',
    );
    await looksRight(inspector, 'photo-large');
    await press('Strike', inspector);
    await inspector.getByLabel('Why it should not count').fill('the gauge hides the edge');
    await press('Strike it', inspector);
    await inspector.getByText('Struck by').waitFor(slow);
    await inspector.keyboard.press('Escape');
    await inspector.getByText('struck', { exact: true }).waitFor(slow);
    await looksRight(inspector, 'photo-struck');
  }, 120_000);

  test('photos of a step, of the part and of how the unit came each stand in their own place', async () => {
    const put = async (region: string, title: string) => {
      const place = technician.getByRole('region', { name: region, exact: true });
      const choosing = technician.waitForEvent('filechooser');
      await place.getByRole('button', { name: 'Take a photo' }).click(slow);
      await (await choosing).setFiles({ name: 'a.jpg', mimeType: 'image/jpeg', buffer: await jpeg(900, 600) });
      const dialog = technician.getByRole('dialog');
      await dialog.getByLabel('What it shows').fill(title);
      await dialog.getByRole('button', { name: 'Put on record' }).click();
      await place.getByAltText(title).waitFor(slow);
    };
    const [step] = await job.nextSteps();
    await technician.goto(`/travelers/${step?.travelerId}?step=${step?.id}`);
    await put('Photos of this step', 'The set-up on the bench');
    await put('Photos of the part', 'The whole blade');
    await looksRight(technician, 'photos-of-a-step');
    await technician.goto(`/work-orders/${job.id}`);
    await put('Photos of how it came', 'The box, dented on one side');
    await looksRight(technician, 'photos-of-arrival');
    const subjects = await readsOf(shop).photo.findMany({ select: { subjectKind: true }, orderBy: { addedAt: 'asc' } });
    expect(subjects.map(({ subjectKind }) => subjectKind)).toEqual([
      'finding',
      'traveler-step',
      'traveler',
      'work-order',
    ]);
  }, 120_000);

  test('the inspector decides: repair, with its steps, by signature', async () => {
    await inspector.goto('/findings?show=undecided');
    await inspector.getByText('F-0001').first().click(slow);
    await press('Decide and sign', inspector);
    await looksRight(inspector, 'decide');
    await inspector.getByText('Repair, by the steps below').click();
    await press('Add a step', inspector);
    await inspector.getByLabel('Step 1').fill('Blend and restore the width');
    await choose(/Process$/, /blade repair/, inspector);
    await inspector.getByLabel('Standard', { exact: true }).fill('45');
    await looksRight(inspector, 'repair-steps');
    await press('Go on to sign', inspector);
    await inspector.getByText('Blend and restore the width (blade repair, 45 min)').waitFor(slow);
    await sign(inspector);
    await inspector.getByText(/F-0001 is decided: repair/).waitFor(slow);
    const finding = await job.reads.finding.findFirstOrThrow({ where: { workOrderId: job.id } });
    expect(finding.disposition).toBe('repair');
  }, 120_000);

  test('what was decided is decided anew with a reason; the earlier decision stays, struck', async () => {
    await inspector.goto('/findings?show=all');
    await inspector.getByText('F-0001').first().click(slow);
    await press('Decide anew', inspector);
    await inspector.getByLabel('Why it no longer holds').fill('blending alone is not enough');
    await inspector.getByText('Repair, by the steps below').click();
    await press('Add a step', inspector);
    await inspector.getByLabel('Step 1').fill('Blend, then peen');
    await choose(/Process$/, /shot peening/, inspector);
    await press('Go on to sign', inspector);
    await inspector.getByText('In place of “repair”').waitFor(slow);
    await sign(inspector);
    const earlier = inspector.getByRole('list', { name: 'Earlier dispositions' });
    await earlier.getByText('blending alone is not enough').waitFor(slow);
    expect(await earlier.locator('s').textContent()).toContain('Blend and restore the width');
    await looksRight(inspector, 'decided-anew');
  }, 120_000);

  test('the inspection queue shows what was measured beside its limits, and what is still open', async () => {
    const hubWork = async () =>
      (await job.nextSteps()).find(({ traveler, level }) => traveler.partClass === 'hub' && level === 'perform');
    for (let step = await hubWork(); step?.phase === 'evaluation'; step = await hubWork()) await job.sign(step);
    await inspector.goto('/inspection');
    await inspector.getByRole('heading', { name: /Still open on/ }).waitFor(slow);
    await inspector.getByText('Measure bores and sockets').waitFor(slow);
    await inspector.getByText('steps to sign').waitFor(slow);
    await looksRight(inspector, 'inspection');
  }, 120_000);

  test('the build does not close while a washer lies in the tray and a spring in the rack; both are named', async () => {
    const { job: built, washer, spring } = await almostClosed(shop);
    await technician.goto(`/build/${built.id}`);
    const check = technician.getByRole('region', { name: 'Left-over check' });
    await check.getByText(new RegExp(`^1 × Q301-37 .*\\(${washer}\\)$`)).waitFor(slow);
    await check.getByText(new RegExp(`^1 × Q301-51 .*\\(${spring}\\)$`)).waitFor(slow);
    await looksRight(technician, 'left-over');
    await press('Close the build');
    await sign();
    const refusal = technician.getByRole('alert').filter({ hasText: 'Q301-37' });
    await refusal.waitFor(slow);
    expect(await refusal.textContent()).toMatch(/Q301-51/);
    await looksRight(technician, 'not-closed');
    await press('Cancel');
    await scan(technician, washer);
    await technician.getByText('the tray is empty').waitFor(slow);
    await scan(technician, spring);
    await check.getByText('nothing left over, nothing missing').waitFor(slow);
    await press('Close the build');
    await sign();
    await technician.getByText(/The build of .* is closed/).waitFor(slow);
    expect((await built.workOrder()).stage).toBe('final-inspection');
    await inspector.goto(`/release/${built.id}`);
    await inspector.getByText('Final inspection').first().waitFor(slow);
    expect(await inspector.getByText('The record will say').count()).toBe(1);
    await looksRight(inspector, 'release-open');
  }, 240_000);

  test('a release is corrected by a newer version; the old one stays archived and says what took its place', async () => {
    const ready = await finallyInspected(shop);
    await inspector.goto(`/release/${ready.id}`);
    await press('Approve for return to service', inspector);
    await sign(inspector);
    await press('Correct it…', inspector);
    await inspector.getByLabel('What was wrong with it').fill('the remark was left out');
    await inspector.getByLabel('Remarks').last().fill('Blades set for this application.');
    await looksRight(inspector, 'release-correct');
    await press('Go on to sign', inspector);
    await inspector.getByText('New remarks: Blades set for this application.').waitFor(slow);
    await sign(inspector);
    const releases = inspector.getByRole('list', { name: 'Releases' });
    await releases.getByText(/superseded by RS-\d+-2/).waitFor(slow);
    expect(await releases.getByRole('link', { name: /Open the archived PDF/ }).count()).toBe(2);
    expect(await releases.getByText('in force').count()).toBe(1);
    await looksRight(inspector, 'release-corrected');
  }, 120_000);

  test.each(['bench?sheet=blocked', 'bench?sheet=units', 'bench?sheet=queues', 'findings?show=all', 'inspection'])(
    '%s has no accessibility fault in the dark on a tablet',
    async (path) => {
      await inspector.emulateMedia({ colorScheme: 'dark' });
      await inspector.setViewportSize({ width: 1180, height: 820 });
      await inspector.goto(`/${path}`);
      await inspector.getByRole('heading', { level: 1 }).waitFor(slow);
      await looksRight(inspector, `${path.replace(/\W+/g, '-')}-dark`);
    },
    60_000,
  );
});
