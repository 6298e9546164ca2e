import pg from 'pg';
import { checkPersonal } from './check-personal.ts';
import { DatabaseSource, plainTexts } from './database-source.ts';
import type { Report } from './source.ts';
import { verifyRecords } from './verify.ts';

/** Checks the records of a database as they stand at one moment; its stored files too when their folder is given. */
export async function verifyDatabase(url: string, filesFolder?: string): Promise<Report> {
  const client = new pg.Client({ connectionString: url });
  await client.connect();
  try {
    await client.query('BEGIN ISOLATION LEVEL REPEATABLE READ READ ONLY');
    await client.query(plainTexts);
    const report = await verifyRecords(new DatabaseSource(client, filesFolder));
    return { ...report, faults: [...report.faults, ...(await checkPersonal(client))] };
  } finally {
    await client.end();
  }
}
