import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { Calendar } from './calendar.ts';
import { shopToday } from './index.ts';
import { seedReference } from './reference.ts';
import { SeedRun } from './run.ts';

/** Fills the tests' template database with the invented shop's reference data, as of the real today or another day. It stores no files. */
export async function fillTestShop(databaseUrl: string, today = shopToday(new Date())): Promise<void> {
  const filesFolder = await mkdtemp(join(tmpdir(), 'hubwright-seed-'));
  const run = await SeedRun.open(databaseUrl, today, filesFolder);
  try {
    const calendar = new Calendar();
    await seedReference(run, calendar);
    await calendar.play(run);
  } finally {
    await run.close();
    await rm(filesFolder, { recursive: true, force: true });
  }
}
