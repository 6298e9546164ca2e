import { fork } from 'node:child_process';
import { randomUUID } from 'node:crypto';
import { mkdtempSync, writeFileSync } from 'node:fs';
import { cpus, loadavg, tmpdir } from 'node:os';
import { join } from 'node:path';
import { ensureBuilt } from '../../apps/server/prepare.mjs';
import { balanceRow, staticBalanceRow } from './balance.ts';
import { buildRows } from './build-sheets.ts';
import { coverRow } from './cover.ts';
import { dueRows } from './due-dates.ts';
import { expectedRows } from './expected.ts';
import { fleetImportRows } from './fleet-import.ts';
import { floorRows } from './floor.ts';
import { kitRows } from './kits.ts';
import { liveRows } from './live.ts';
import { cpuPerRequest, median, type Shot, send } from './load.ts';
import { processRows } from './process-maths.ts';
import { startServer } from './server.ts';
import { type BenchShop, openShop } from './shop.ts';
import { shortageRows } from './shortages.ts';
import { statementsOf } from './statements.ts';

// `npm run bench`: figures as ratios, both sides in one run, alternating, median of the rounds. Nothing here is asserted.
// `npm run bench -- maths` leaves out what needs a server, `-- shortages` all but the parts room's answers, `-- due-dates` all but the desk's,
// `-- fleet-import` all but a customer's table.
const rounds = Number(process.env.ROUNDS ?? 5);
const figures: string[][] = [];

async function main(): Promise<void> {
  if (process.argv.includes('shortages')) await partsRoomRows();
  else if (process.argv.includes('due-dates')) await deskRows();
  else if (process.argv.includes('fleet-import')) await tableRows();
  else await allRows();
  const { model } = cpus()[0] ?? { model: 'unknown' };
  console.log(
    `\n${cpus().length} cores (${model}), load ${loadavg()[0]?.toFixed(1)}, Node ${process.versions.node}, median of ${rounds} rounds\n`,
  );
  const head = ['what', 'ours', 'twin', 'twin / ours', 'spread of ours', 'size'];
  for (const row of [head, ...figures]) console.log(`| ${row.join(' | ')} |`);
}

async function allRows(): Promise<void> {
  if (!process.argv.includes('maths')) await shopRows();
  figures.push(balanceRow(rounds));
  figures.push(...buildRows(rounds));
  figures.push(staticBalanceRow(rounds));
  figures.push(...processRows(rounds));
  figures.push(...(await kitRows(rounds)));
}

async function partsRoomRows(): Promise<void> {
  ensureBuilt();
  const shop = await openShop();
  const ours = await startServer(shop);
  try {
    await answersOfClerk(shop, ours);
  } finally {
    ours.stop();
    await shop.close();
  }
}

/** What a clerk waits for, on kits and due units of a large shop. */
async function answersOfClerk(shop: BenchShop, { port, pid }: Running): Promise<void> {
  const clerk = { port, pid, cookie: shop.cookie, bins: shop.bins };
  const url = shop.environment.DATABASE_URL ?? '';
  figures.push(...(await shortageRows(clerk, url)), ...(await expectedRows(clerk, url)));
}

async function deskRows(): Promise<void> {
  ensureBuilt();
  figures.push(...(await dueRows()));
}

async function tableRows(): Promise<void> {
  ensureBuilt();
  const shop = await openShop();
  const ours = await startServer(shop);
  try {
    figures.push(...(await fleetImportRows(shop, ours.port, rounds)));
  } finally {
    ours.stop();
    await shop.close();
  }
}

/** What needs the server and a shop. */
async function shopRows(): Promise<void> {
  ensureBuilt();
  const shop = await openShop();
  try {
    await httpRows(shop);
    figures.push(await coverRow(rounds, shop.serverUrl));
  } finally {
    await shop.close();
  }
  await tableRows();
  figures.push(...(await dueRows()));
}

const reads = {
  '/lot': (shop: BenchShop) => `/api/inventory/lots/${shop.lots[0]}`,
  '/list': () => '/api/work-orders?limit=50',
};

async function httpRows(shop: BenchShop): Promise<void> {
  const ours = await startServer(shop);
  const twin = await startTwin(await planFile(shop));
  try {
    await readRow('point read: one lot', '/lot', { shop, ours, twin, count: 3_000 });
    await readRow('list of 50 work orders', '/list', { shop, ours, twin, count: 600 });
    const same = (n: number) => JSON.stringify({ noted: shop.lots[0], now: shop.lots[n % shop.lots.length] });
    await row('one stock movement, 32 clients', sizeOf(shop), {
      ours: { ...ours, shots: (n) => move(shop, n) },
      twin: { ...twin, shots: (n) => ({ method: 'POST', path: '/move', headers: {}, body: same(n) }) },
      count: 800,
    });
    const command = (n: number) => ({ shot: move(shop, n), subject: shop.lots[n % shop.lots.length] ?? '' });
    figures.push(...(await liveRows(ours, { cookie: shop.cookie, rounds, command })));
    figures.push(...(await floorRows(ours.port, shop.environment.DATABASE_URL ?? '')));
    await answersOfClerk(shop, ours);
  } finally {
    ours.stop();
    twin.stop();
  }
}

/** Notes what the server sends to the database for one request of each row; the twin replays it. */
async function planFile(shop: BenchShop): Promise<string> {
  const noted: Record<string, Awaited<ReturnType<typeof statementsOf>>> = {};
  for (const [name, path] of Object.entries(reads)) {
    noted[name] = await statementsOf(async () => void (await send(shop.inProcessPort, get(shop, path(shop)))));
  }
  const noting = move(shop, 0);
  const write = await statementsOf(async () => void (await send(shop.inProcessPort, noting)));
  const begin = write.findIndex(({ text }) => /^BEGIN/i.test(text));
  const plan = {
    url: shop.serverUrl,
    reads: noted,
    write: { before: write.slice(0, begin), transaction: write.slice(begin) },
    fresh: [noting.headers['idempotency-key'], ...(await shop.newest())],
  };
  const file = join(mkdtempSync(join(tmpdir(), 'hubwright-bench-')), 'plan.json');
  writeFileSync(
    file,
    JSON.stringify(plan, (_, value) => (typeof value === 'bigint' ? String(value) : value)),
  );
  return file;
}

function sizeOf(shop: BenchShop): string {
  return `${shop.lots.length} lots, ${shop.workOrders} work orders`;
}

interface Running {
  readonly port: number;
  readonly pid: number;
}

async function readRow(
  what: string,
  name: keyof typeof reads,
  run: { shop: BenchShop; ours: Running; twin: Running; count: number },
): Promise<void> {
  const { shop, ours, twin, count } = run;
  await row(what, sizeOf(shop), {
    ours: { ...ours, shots: () => get(shop, reads[name](shop)) },
    twin: { ...twin, shots: () => ({ method: 'GET', path: name, headers: {} }) },
    count,
  });
}

interface Side {
  readonly port: number;
  readonly pid: number;
  readonly shots: (n: number) => Shot;
}

async function row(what: string, size: string, sides: { ours: Side; twin: Side; count: number }): Promise<void> {
  const spent = { ours: [] as number[], twin: [] as number[] };
  for (let round = 0; round <= rounds; round += 1) {
    for (const side of ['ours', 'twin'] as const) {
      const { shots, ...target } = sides[side];
      const cpu = await cpuPerRequest(target, { shots, count: sides.count, clients: 32 });
      if (round > 0) spent[side].push(cpu); // the first round warms up
    }
  }
  const [ours, twin] = [median(spent.ours), median(spent.twin)];
  const spread = `${Math.min(...spent.ours).toFixed(2)}–${Math.max(...spent.ours).toFixed(2)}`;
  console.log(`${what}: ${ours.toFixed(2)} against ${twin.toFixed(2)} ms of processor time`);
  figures.push([
    what,
    `${ours.toFixed(2)} ms CPU`,
    `${twin.toFixed(2)} ms CPU`,
    (twin / ours).toFixed(2),
    spread,
    size,
  ]);
}

function get(shop: BenchShop, path: string): Shot {
  return { method: 'GET', path, headers: { cookie: shop.cookie } };
}

function move(shop: BenchShop, n: number): Shot {
  const lot = shop.lots[n % shop.lots.length];
  const [from, to] = Math.floor(n / shop.lots.length) % 2 === 0 ? shop.bins : [shop.bins[1], shop.bins[0]];
  return {
    method: 'POST',
    path: `/api/inventory/lots/${lot}/moves`,
    headers: { cookie: shop.cookie, 'content-type': 'application/json', 'idempotency-key': randomUUID() },
    body: JSON.stringify({ from, to, quantity: 1 }),
  };
}

function startTwin(file: string): Promise<{ port: number; pid: number; stop: () => boolean }> {
  const child = fork('tests/bench/twin.ts', [file], { execArgv: ['--import', 'tsx'] });
  return new Promise((resolve) => {
    child.once('message', (message) =>
      resolve({ port: (message as { port: number }).port, pid: child.pid ?? 0, stop: () => child.kill() }),
    );
  });
}

await main();
process.exit(0);
