import { afterAll, beforeAll, describe, test } from '@jest/globals';
import type { Browser, Locator, Page } from 'playwright-core';
import { bladeProgram } from '../../seed/data/peening.ts';
import { fourBlade } from '../support/arrivals.ts';
import { openBrowser } from '../support/browser.ts';
import { Job } from '../support/job.ts';
import { looksRight, signsWithPin } from '../support/looks.ts';
import { ShopApp } from '../support/shop-app.ts';
import { builtDashboard, pageOf } from '../support/view-page.ts';

const slow = { timeout: 20_000 };
const strip = async (dialog: Locator, area: string, before: string, after: string) => {
  await dialog.getByLabel(`Before, ${area}`).fill(before);
  await dialog.getByLabel(`After, ${area}`).fill(after);
};

describe('peening between strips', () => {
  let shop: ShopApp;
  let browser: Browser;
  let technician: Page;
  let inspector: Page;
  beforeAll(async () => {
    shop = await ShopApp.open('shop', { dashboardFolder: builtDashboard });
    const job = await Job.arrived(shop, 'B4101', await fourBlade(shop, 'B4101'));
    await job.inWork();
    for (const position of ['blade 1', 'blade 2'])
      for (;;) {
        const step = await job.nextAt(position);
        if (step.peening !== null) break;
        await job.sign(step);
      }
    browser = await openBrowser();
    technician = await pageOf(browser, shop, { signInName: 'maren', width: 1180, height: 820 });
    inspector = await pageOf(browser, shop, { signInName: 'inspector' });
  }, 120_000);
  afterAll(async () => {
    await browser?.close();
    await shop?.close();
  });

  test('a lot is begun by good strips, signed with its coverage, and held by a closing strip that fails', async () => {
    await technician.goto('/peening');
    await technician.getByText('2 parts wait for peening').waitFor(slow);
    await technician.getByRole('button', { name: 'Begin a lot' }).click();
    const dialog = technician.getByRole('dialog');
    for (const blade of ['blade 1', 'blade 2']) await dialog.getByText(new RegExp(blade)).click();
    await dialog.getByRole('button', { name: /Machine and program/ }).click();
    await technician.getByRole('option', { name: /PEEN-01/ }).click();
    for (const [area, height] of [
      ['leading edge', '0.0095'],
      ['trailing edge', '0.0075'],
      ['shank', '0.0105'],
    ])
      await strip(dialog, area ?? '', '0.0002', height ?? '');
    await dialog.getByText('arc height 0.0093 in A').waitFor(slow);
    await dialog.getByText('on C: guidance only').first().waitFor(slow);
    await dialog.getByText('Nozzles looked at').click();
    await dialog.getByText('Media looked at').click();
    await looksRight(technician, 'peening-begin');
    await dialog.getByRole('button', { name: 'Go on to sign' }).click();
    await signsWithPin(technician);
    await technician.getByText('PL-0001 is begun.').waitFor(slow);

    await technician.getByRole('button', { name: 'All of it is peened: sign' }).click(slow);
    for (const area of ['leading edge', 'trailing edge', 'shank'])
      await technician.getByLabel(`Coverage, ${area}`).fill('100');
    await technician.getByRole('button', { name: 'Go on to sign' }).click();
    await signsWithPin(technician);
    await technician.getByText('closing strips missing').waitFor(slow);

    await technician.getByRole('button', { name: 'Read the closing strips' }).click(slow);
    const closing = technician.getByRole('dialog');
    await strip(closing, 'leading edge', '0.0014', '0.0108');
    await closing.getByText('0.001 is the most').waitFor(slow);
    await strip(closing, 'leading edge', '0.0001', '0.0095');
    await strip(closing, 'trailing edge', '0.0000', '0.0055');
    await strip(closing, 'shank', '-0.0002', '0.0102');
    await looksRight(technician, 'peening-closing');
    await technician.getByRole('button', { name: 'Go on to sign' }).click();
    await signsWithPin(technician);
    await technician.getByText('held: closing strips failed').first().waitFor(slow);
    await technician.getByText('before “Anodise”').first().waitFor(slow);
    await looksRight(technician, 'peening-held');
  }, 180_000);

  test('the program is qualified anew by strips that are drawn while they are typed, and the lot is peened again', async () => {
    await inspector.goto('/inspection');
    const unproved = inspector.getByRole('region', { name: 'Peening lots that are not proved' });
    await unproved.getByText('held: closing strips failed').waitFor(slow);
    await looksRight(inspector, 'inspection-unproved-lot');
    await inspector.goto('/peening?sheet=machines');
    await inspector.getByText('strips of PL-0001 failed since').waitFor(slow);
    await inspector.getByRole('img', { name: 'Saturation of leading edge' }).waitFor(slow);
    await inspector.getByRole('img', { name: /^Arc heights of trailing edge/ }).waitFor(slow);
    await looksRight(inspector, 'peening-machine');
    await inspector.getByRole('button', { name: 'Qualify a program' }).click();
    const dialog = inspector.getByRole('dialog');
    await dialog.getByLabel('Program', { exact: true }).fill(bladeProgram.program);
    await dialog.getByText('S170, media lot SH-2214').waitFor(slow);
    await dialog.getByLabel('air pressure').fill('40');
    await dialog.getByLabel('stand-off').fill('6.0');
    for (const [index, area] of bladeProgram.areas.entries()) {
      if (index > 0) await dialog.getByRole('button', { name: 'Add an area' }).click();
      await dialog.getByLabel('Area', { exact: true }).nth(index).fill(area.name);
      await dialog.getByLabel('Band from').nth(index).fill(area.low);
      await dialog.getByLabel('Band to').nth(index).fill(area.high);
      await dialog.getByLabel('Exposure parts get').nth(index).fill(area.exposure);
      const lines = area.strips.map(({ time, arcHeight }) => `${time}\t${arcHeight}`).join('\n');
      const strips = dialog.getByRole('textbox', { name: 'Strips' }).nth(index);
      if (index === 0) {
        await strips.fill(`${lines}\n20\t0.0090`);
        await dialog.getByText('The arc height at 20 is below that of a shorter exposure.').waitFor(slow);
        await looksRight(inspector, 'peening-falling');
      }
      await strips.fill(lines);
    }
    await dialog.getByRole('img', { name: 'Saturation of shank' }).waitFor(slow);
    await looksRight(inspector, 'peening-qualify');
    await dialog.getByRole('button', { name: 'Go on to sign' }).click();
    await signsWithPin(inspector);
    await inspector.getByText(`PEEN-01 is qualified for ${bladeProgram.program}.`).waitFor(slow);

    await inspector.goto('/peening');
    await inspector.getByRole('button', { name: 'Peen it again' }).click(slow);
    await inspector.getByLabel('What went wrong').fill('Air pressure had dropped');
    await inspector.getByRole('button', { name: 'Go on to sign' }).click();
    await signsWithPin(inspector);
    await inspector.getByText('2 parts of PL-0001 are peened again.').waitFor(slow);
    await inspector.getByText('2 parts wait for peening').waitFor(slow);
  }, 180_000);
});
