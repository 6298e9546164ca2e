import { expect } from '@jest/globals';
import type { Page } from 'playwright-core';
import { demoPin } from '../../seed/data/people.ts';
import { accessibilityFaults, picture } from './view-page.ts';

/** The page as it is now has no accessibility fault; a picture of it is kept. */
export async function looksRight(page: Page, name: string): Promise<void> {
  expect(await accessibilityFaults(page)).toEqual([]);
  await picture(page, name);
}

/** Signs what the open dialog shows, as whoever is signed in. */
export async function signsWithPin(page: Page): Promise<void> {
  await page.getByLabel('Your PIN').fill(demoPin);
  await page.getByRole('button', { name: /^Sign as/ }).click();
}
