import pg from 'pg';
import { demoPassword } from '../../seed/data/people.ts';
import { openBrowser } from '../support/browser.ts';
import { median, send } from './load.ts';

const waiting = 300;
const tries = 30;

/** Copies one blade's traveler until so many parts wait at the benches, each with its steps and limits. */
async function moreTravelers(databaseUrl: string): Promise<number> {
  const sql = new pg.Client({ connectionString: databaseUrl });
  await sql.connect();
  try {
    await sql.query(
      `WITH one AS (SELECT t.* FROM travelers t JOIN work_orders w ON w.id = t.work_order_id
         WHERE t.part_class = 'blade' AND w.stage = 'teardown' AND w.closed_at IS NULL
           AND EXISTS (SELECT 1 FROM traveler_steps s WHERE s.traveler_id = t.id AND s.state = 'open' AND s.phase = 'evaluation') ORDER BY t.number LIMIT 1),
       made AS (INSERT INTO travelers (id, work_order_id, item_id, number, part_class, position, title, revision_id, created_at)
         SELECT uuidv7(), o.work_order_id, o.item_id, 'TR-B' || n, o.part_class, o.position, o.title, o.revision_id, now() FROM one o, generate_series(1, $1::int) n RETURNING id),
       steps AS (INSERT INTO traveler_steps (id, traveler_id, sequence, title, instruction, process, level, kind, phase, standard_minutes, instrument_kind, caution, fact, form, branch, wait_minutes, outside, batched, tools, attempt, most_repairs, state)
         SELECT uuidv7(), m.id, s.sequence, s.title, s.instruction, s.process, s.level, s.kind, s.phase, s.standard_minutes, s.instrument_kind, s.caution, s.fact, s.form, s.branch, s.wait_minutes, s.outside, s.batched, s.tools, s.attempt, s.most_repairs, 'open'
         FROM made m, one o JOIN traveler_steps s ON s.traveler_id = o.id RETURNING id)
       SELECT count(*) FROM steps`,
      [waiting],
    );
    await sql.query('ANALYZE');
    const { rows } = await sql.query(
      "SELECT count(DISTINCT traveler_id)::int AS n FROM traveler_steps WHERE state = 'open'",
    );
    return rows[0].n;
  } finally {
    await sql.end();
  }
}

const spreadOf = (values: readonly number[]) => {
  const sorted = [...values].sort((a, b) => a - b);
  return { half: median(values), most: sorted[Math.floor(sorted.length * 0.95)] ?? Number.NaN };
};

/** A bench with 300 waiting parts: the server's answer, and how soon the page shows what a touch asks for. Real time: a person waits. */
export async function floorRows(port: number, databaseUrl: string): Promise<string[][]> {
  const parts = await moreTravelers(databaseUrl);
  const browser = await openBrowser();
  try {
    const context = await browser.newContext({
      viewport: { width: 1180, height: 820 },
      baseURL: `http://127.0.0.1:${port}`,
    });
    const page = await context.newPage();
    await page.goto('/sign-in');
    await page.getByLabel('Sign-in name').fill('tech');
    await page.getByLabel('Password', { exact: true }).fill(demoPassword);
    await page.keyboard.press('Enter');
    await page.waitForURL((url) => !url.pathname.startsWith('/sign-in'));
    const cookie = (await context.cookies()).map(({ name, value }) => `${name}=${value}`).join('; ');
    const answers: number[] = [];
    for (let n = 0; n < tries; n += 1)
      answers.push(
        (await send(port, { method: 'GET', path: '/api/bench-board?limit=200', headers: { cookie } })).milliseconds,
      );
    await page.goto('/bench');
    await page.getByRole('tab', { name: /^Mine to sign/ }).waitFor();
    const touches: number[] = [];
    for (let n = 0; n < tries; n += 1) touches.push(await page.evaluate<number>(touch(n)));
    const row = (what: string, { half, most }: { half: number; most: number }) => [
      ...[what, `${half.toFixed(0)} ms`, '–', '–', `95 of 100 in ${most.toFixed(0)} ms`, `${parts} waiting parts`],
    ];
    return [
      row('bench board, the server’s answer', spreadOf(answers)),
      row('bench page, touch to drawn', spreadOf(touches)),
    ];
  } finally {
    await browser.close();
  }
}

/** Inside the page: a press on the next sheet until it is laid out and painted. */
function touch(n: number): string {
  return `new Promise((done) => {
    const sheets = ['Mine to sign', 'Queues', 'Blocked'];
    const tab = [...document.querySelectorAll('[role=tab]')].find((one) => one.textContent.startsWith(sheets[(${n} + 1) % 3]));
    const began = performance.now();
    tab.dispatchEvent(new PointerEvent('pointerdown', { bubbles: true, button: 0, pointerType: 'mouse' }));
    tab.dispatchEvent(new PointerEvent('pointerup', { bubbles: true, button: 0, pointerType: 'mouse' }));
    tab.click();
    const look = () => tab.getAttribute('aria-selected') === 'true'
      ? requestAnimationFrame(() => setTimeout(() => done(performance.now() - began)))
      : performance.now() - began > 5000 ? done(Number.NaN) : setTimeout(look, 1);
    look();
  })`;
}
