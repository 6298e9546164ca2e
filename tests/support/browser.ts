import { existsSync } from 'node:fs';
import { type Browser, chromium as launcher } from 'playwright-core';

/**
 * A real Chromium: the one CHROME_PATH names, else the system's, else the one that came with the packages, which also
 * brings the libraries a bare machine lacks. `npx playwright install` is not needed.
 */
export async function openBrowser(): Promise<Browser> {
  const installed = [process.env.CHROME_PATH, '/usr/bin/chromium', '/usr/bin/google-chrome'].find(
    (path) => path && existsSync(path),
  );
  const executablePath = installed ?? (await packagedChromium());
  return launcher.launch({ executablePath, args: [...quiet, ...(installed ? [] : ['--headless=shell'])] });
}

// Without a sandbox of its own, since test machines often run as root; it only ever opens our own pages.
const quiet = [
  '--no-sandbox',
  '--disable-gpu',
  '--disable-quic',
  '--no-first-run',
  '--disable-background-networking',
  '--disable-component-update',
  '--disable-sync',
  '--disable-dev-shm-usage',
];

/** The package unpacks its libraries only where it believes to run in a function service: that must be said before it loads. */
async function packagedChromium(): Promise<string> {
  process.env.AWS_EXECUTION_ENV ??= 'AWS_Lambda_nodejs22.x';
  const { default: chromium } = await import('@sparticuz/chromium');
  return chromium.executablePath();
}
