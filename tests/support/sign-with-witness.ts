import type { Page } from 'playwright-core';
import { demoPin } from '../../seed/data/people.ts';

/** In the signature dialog: who saw it, that person's PIN and the clerk's own. */
export async function signWithWitness(page: Page, witness: string): Promise<void> {
  const signing = page.getByRole('alertdialog');
  await signing.getByRole('button', { name: /Seen by/ }).click();
  await page.getByRole('option', { name: witness }).click();
  await signing.getByLabel('The witness’s PIN').fill(demoPin);
  await signing.getByLabel('Your PIN').fill(demoPin);
  await signing.getByRole('button', { name: /^Sign as/ }).click();
}
