import { afterAll, beforeAll, describe, expect, test } from '@jest/globals';
import pg from 'pg';
import type { Browser, Page } from 'playwright-core';
import { issueLot } from '../../apps/server/src/modules/kits/issue-lot.command.ts';
import { issueRevision } from '../../apps/server/src/modules/manuals/issue-revision.command.ts';
import { demoPin } from '../../seed/data/people.ts';
import { readsOf, threeBlade } from '../support/arrivals.ts';
import { openBrowser } from '../support/browser.ts';
import { Job } from '../support/job.ts';
import { threeBladeContent } from '../support/manual-content.ts';
import { ShopApp } from '../support/shop-app.ts';
import { accessibilityFaults, builtDashboard, pageOf, picture } from '../support/view-page.ts';

const slow = { timeout: 20_000 };
const sizes = [
  { width: 1366, height: 768 },
  { width: 1180, height: 820 },
];

describe('what seldom happens at the bench and the desk', () => {
  let shop: ShopApp;
  let browser: Browser;
  let desk: Page;
  let inspector: Page;
  let job: Job;
  let movedPart: string;

  beforeAll(async () => {
    shop = await ShopApp.open('shop', { dashboardFolder: builtDashboard });
    const earlier = await Job.arrived(shop, 'QO8001');
    await owner(shop, `UPDATE work_orders SET stage = 'closed', closed_at = now() WHERE id = '${earlier.id}'`);
    const { parts } = await threeBlade(shop, 'QO8001');
    // Only blade 1 can be read at the dock, and it is another one than last time.
    const unread = parts.map((part) => ({ ...part, serial: part.position === 'blade 1' ? 'B1-OTHER' : null }));
    job = await Job.arrived(shop, null as never, { parts: unread });
    await job.tornDown();
    browser = await openBrowser();
    desk = await pageOf(browser, shop, { signInName: 'desk' });
    inspector = await pageOf(browser, shop, { signInName: 'inspector' });
  }, 240_000);
  afterAll(async () => {
    await browser?.close();
    await shop?.close();
  });

  /** No accessibility fault by day and by night, on a laptop and on a tablet; a picture of each is kept. */
  async function looksRight(page: Page, name: string) {
    for (const colorScheme of ['dark', 'light'] as const) {
      await page.emulateMedia({ colorScheme });
      for (const size of sizes.toReversed()) {
        await page.setViewportSize(size);
        await picture(page, `odd-${name}-${size.width}-${colorScheme}`);
      }
      expect(await accessibilityFaults(page)).toEqual([]);
    }
  }
  const press = (page: Page, name: string | RegExp) => page.getByRole('button', { name }).first().click(slow);
  const answer = (page: Page, name: string | RegExp) =>
    page.getByRole('dialog').getByRole('button', { name }).click(slow);
  async function sign(page: Page) {
    await page.getByLabel('Your PIN').fill(demoPin);
    await press(page, /^Sign as/);
  }

  test('a serial read at last is one on record: shown with what follows, then signed', async () => {
    await inspector.goto(`/units/${job.unitId}`);
    await press(inspector, /^Read the serial of unit of/);
    await inspector.getByLabel('Serial as read on the part').fill('QO8001');
    await answer(inspector, 'Go on to sign');
    await inspector.getByText(/is on record\. Its history goes on there/).waitFor(slow);
    await looksRight(inspector, 'join-identity');
    await answer(inspector, 'This is that unit');
    await looksRight(inspector, 'join-identity-signing');
    await sign(inspector);
    await inspector.getByText(/The serial read on it is on record/).waitFor(slow);
    const { unitId } = await job.workOrder();
    expect(await job.reads.serializedItem.findUnique({ where: { id: unitId } })).toMatchObject({ serial: 'QO8001' });
  }, 120_000);

  test('times come from a paper found later: fewer than on record is refused at its field, the rest is signed', async () => {
    const { unitId } = await job.workOrder();
    await inspector.goto(`/units/${unitId}`);
    await press(inspector, 'Record times from a paper');
    await inspector.getByLabel('Which paper says so').fill('engine logbook, volume 2');
    await inspector.getByLabel('Hours since new').fill('100');
    await answer(inspector, 'Go on to sign');
    await sign(inspector);
    await inspector.getByRole('dialog').getByText('Less than on record').first().waitFor(slow);
    await looksRight(inspector, 'times-refused');
    await inspector.getByLabel('Hours since new').fill('2150.5');
    await inspector.getByLabel('Hours since overhaul').fill('12.0');
    await inspector.getByLabel('Cycles since new').fill('340');
    await answer(inspector, 'Go on to sign');
    await sign(inspector);
    await inspector.getByText(/^What papers said/).click(slow);
    await inspector.getByRole('cell', { name: 'engine logbook, volume 2' }).waitFor(slow);
    await looksRight(inspector, 'times');
    const newest = await job.reads.timeRecord.findFirst({ where: { itemId: unitId }, orderBy: { recordedAt: 'desc' } });
    expect(newest).toMatchObject({ sinceNewTenths: 21_505, sinceOverhaulTenths: 120, sinceNewCycles: 340 });
  }, 120_000);

  test('a revision that limits lives and drops a line: told line by line before an inspector goes over', async () => {
    movedPart = await revised();
    await inspector.goto(`/build/${job.id}`);
    await inspector.getByText(/was superseded by/).waitFor(slow);
    const told = inspector.getByRole('region', { name: 'The manual was revised' });
    await told.getByRole('row', { name: /Q76-B.*not there.*5,000\.0 h or 500 cycles since new/ }).waitFor(slow);
    await told.getByText(/fitted here: blade 1, serial B1-OTHER/).waitFor(slow);
    await looksRight(inspector, 'rebase');
    await press(inspector, /^Go on by revision/);
    await sign(inspector);
    await inspector.getByText(/was superseded by/).waitFor({ ...slow, state: 'detached' });
  }, 120_000);

  test('the kit names what its lines do not ask for any more', async () => {
    await inspector.goto(`/kits/${job.kitId}`);
    await inspector.getByRole('heading', { name: 'Open in this kit' }).waitFor(slow);
    await inspector.getByRole('row', { name: new RegExp(`bring back.*${movedPart}`) }).waitFor(slow);
    await looksRight(inspector, 'kit-open');
  }, 90_000);

  test('the manual shows its life limits, the release names the parts they stop', async () => {
    const { revisionId } = await job.workOrder();
    await inspector.goto(`/manual-revisions/${revisionId}?sheet=life-limits`);
    await inspector.getByRole('row', { name: /Q76-B.*5,000\.0.*500/ }).waitFor(slow);
    await looksRight(inspector, 'manual-life-limits');
    await inspector.goto(`/release/${job.id}`);
    await inspector.getByText(/blade 1, Q76-B serial B1-OTHER: limited to .* its total is unknown/).waitFor(slow);
    await looksRight(inspector, 'release-life-limit');
  }, 90_000);

  test('work that was agreed ends: the unit goes back unrepaired, every piece tagged before it leaves', async () => {
    const agreed = await Job.arrived(shop, 'QO8002');
    await agreed.inWork();
    await desk.goto(`/work-orders/${agreed.id}`);
    await press(desk, 'Goes back unrepaired');
    await desk.getByLabel('Who decided, at the customer').fill('Leda Varley');
    await desk.getByLabel('Why', { exact: true }).fill('a new one costs less');
    await looksRight(desk, 'goes-back');
    await answer(desk, 'End the work');
    await desk.getByText(/every piece is tagged before it leaves/).waitFor(slow);
    expect(await agreed.workOrder()).toMatchObject({ stage: 'returning-unrepaired', consent: 'declined' });
    await press(desk, 'OK to ship');
    await desk.getByRole('checkbox', { name: /spinner dome/ }).check({ force: true });
    await desk.getByRole('checkbox', { name: /mounting nuts/ }).check({ force: true });
    await answer(desk, 'OK to ship');
    await desk
      .getByRole('dialog')
      .getByText(/every piece carries an unserviceable tag/)
      .first()
      .waitFor(slow);
    await looksRight(desk, 'not-tagged');
    await desk.getByRole('checkbox', { name: 'Every piece carries an unserviceable tag' }).check({ force: true });
    await answer(desk, 'OK to ship');
    await press(desk, /^Ship$/);
    await desk.getByLabel('Carrier').fill('Picked up by the customer');
    await answer(desk, 'It left the house');
    await desk.getByText(`${agreed.number} is shipped.`).waitFor(slow);
    expect((await agreed.workOrder()).stage).toBe('shipped');
  }, 120_000);

  /** A line of the kit is pulled; then comes a revision without it, with other limits and with limited lives. Answers its part. */
  async function revised(): Promise<string> {
    const { revisionId, modelId } = await job.workOrder();
    const line = await job.reads.kitLine.findFirstOrThrow({
      where: { kitId: job.kitId, source: 'new', quantity: 1 },
      include: { part: true },
    });
    const lotCode = await job.onShelf(line.partId, 1);
    await shop.run(issueLot, { kitId: job.kitId, lineId: line.id, lotCode, quantity: 1 }, job.people.clerk);
    const content = await threeBladeContent(shop);
    const [before] = content.routes.flatMap(({ steps }) => steps.flatMap(({ measures }) => measures));
    const models = [
      {
        ...content,
        modelId,
        kitList: content.kitList.filter(
          ({ part, position }) => part !== line.part.number || position !== line.position,
        ),
        routes: content.routes.map((route) => ({
          ...route,
          steps: route.steps.map((step) => ({
            ...step,
            measures: step.measures.map((measure) =>
              measure === before ? { ...measure, decimals: measure.decimals + 1 } : measure,
            ),
            // A test may name only seals that the kit list still has.
            ...(step.sheet?.kind === 'function-test'
              ? { sheet: { ...step.sheet, seals: step.sheet.seals.filter((seal) => seal !== line.position) } }
              : {}),
          })),
        })),
        tboRules: [],
        lifeLimits: [
          { partNumber: 'Q76-B', hoursTenths: 50_000, cycles: 500 },
          { partNumber: 'Q301-61', hoursTenths: 90_000 },
        ],
      },
    ];
    const { manualId } = await readsOf(shop).manualRevision.findUniqueOrThrow({ where: { id: revisionId } });
    const revision = { manualId, revision: '9', issuedOn: '2026-01-05', models };
    await shop.run(issueRevision, revision as never, job.people.inspector);
    return line.part.number;
  }
});

/** Past the commands, as the owner of the tables. */
async function owner(shop: ShopApp, text: string): Promise<void> {
  const client = new pg.Client({ connectionString: shop.databaseUrl });
  await client.connect();
  await client.query(text);
  await client.end();
}
