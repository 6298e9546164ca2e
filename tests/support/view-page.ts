import { mkdirSync, readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import type { Browser, Page } from 'playwright-core';
import { demoPassword } from '../../seed/data/people.ts';
import type { ShopApp } from './shop-app.ts';

const root = fileURLToPath(new URL('../..', import.meta.url));
const axeSource = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');

/** The dashboard as it was last built; `npm test` builds it first. */
export const builtDashboard = join(root, 'apps/dashboard/dist');

/** A browser window of its own in which someone of the invented shop has signed in. */
export async function pageOf(
  browser: Browser,
  shop: ShopApp,
  { signInName, width = 1366, height = 768 }: { signInName: string; width?: number; height?: number },
): Promise<Page> {
  const context = await browser.newContext({ viewport: { width, height }, baseURL: shop.address });
  const page = await context.newPage();
  await page.goto('/sign-in');
  await page.getByLabel('Sign-in name').fill(signInName);
  await page.getByLabel('Password', { exact: true }).fill(demoPassword);
  await page.keyboard.press('Enter');
  await page.waitForURL((url) => !url.pathname.startsWith('/sign-in'));
  return page;
}

/**
 * A barcode wedge: the keys of the code and Enter, one right after the other, to whatever has the focus. Sent from inside the
 * page, because keys sent one by one from outside come as slowly as a person types when the machine is busy.
 */
export async function scan(page: Page, code: string): Promise<void> {
  await page.evaluate(`for (const key of [...${JSON.stringify(code)}, 'Enter']) {
    const target = document.activeElement ?? document.body;
    target.dispatchEvent(new KeyboardEvent('keydown', { key, bubbles: true, cancelable: true }));
  }`);
}

/** The button that closes a message; one that offers to undo stays, a story may go on with it. */
const lonely = '.toast:not(:has(button + button)) button';

/**
 * What an accessibility scan by WCAG 2.2 A and AA rules finds on the page as it is now. Left out is the region in which the
 * widgets' library speaks to screen readers: its messages name buttons that may be gone, and vanish after seconds.
 */
export async function accessibilityFaults(page: Page): Promise<string[]> {
  // A page that is still loading its part of the dashboard has no heading yet; one that never gets it fails the scan.
  await page
    .locator('h1')
    .first()
    .waitFor({ state: 'attached', timeout: 10_000 })
    .catch(() => undefined);
  await page.evaluate(axeSource);
  // What has scrolled half under the head is no small target.
  await page.evaluate('window.scrollTo(0, 0)');
  // A message that something was done lies over the page for seconds: it is scanned by itself, then closed as anyone would.
  const onMessages = (await page.locator('.toast').count()) > 0 ? await scanned(page, { include: ['.toasts'] }) : [];
  await page.evaluate(`for (const close of document.querySelectorAll('${lonely}')) close.click()`);
  await until(page, `document.querySelector('${lonely}') === null`);
  return [...onMessages, ...(await scanned(page, { include: ['html'], exclude: ['[data-live-announcer]'] }))];
}

async function scanned(page: Page, context: object): Promise<string[]> {
  const options = { runOnly: ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice'] };
  const found = await page.evaluate<AxeResult>(`axe.run(${JSON.stringify(context)}, ${JSON.stringify(options)})`);
  return found.violations.map(({ id, nodes }) => `${id}: ${nodes.map((node) => node.html).join(' | ')}`);
}

/** Waits until an expression holds on the page. Asked again and again from outside: the page itself may not evaluate text. */
export async function until(page: Page, expression: string, seconds = 10): Promise<void> {
  for (const end = Date.now() + seconds * 1_000; Date.now() < end; await page.waitForTimeout(50))
    if (await page.evaluate<boolean>(expression)) return;
  throw new Error(`Never came true: ${expression}`);
}

interface AxeResult {
  violations: { id: string; nodes: { html: string }[] }[];
}

/**
 * Keeps what the page looks like now, in `.cache/pictures/<name>.png`, when HUBWRIGHT_PICTURES is set: pictures are for eyes
 * and check nothing, and a browser on a busy machine can take half a minute over one.
 */
export async function picture(page: Page, name: string): Promise<void> {
  if (!process.env.HUBWRIGHT_PICTURES) return;
  const folder = join(root, '.cache/pictures');
  mkdirSync(folder, { recursive: true });
  await page.screenshot({ path: join(folder, `${name}.png`) });
}
