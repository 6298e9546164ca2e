import { execFileSync } from 'node:child_process';
import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { setTimeout as wait } from 'node:timers/promises';

/** A server process found through the `postmaster.pid` it keeps in its data folder. */
export type Postmaster = { pid: number; port: number };

/** Lines 1 and 4 of postmaster.pid are the process and the port (PostgreSQL source, `src/include/utils/pidfile.h`). */
export function readPostmaster(dataFolder: string): Postmaster | undefined {
  const file = join(dataFolder, 'postmaster.pid');
  if (!existsSync(file)) return undefined;
  const lines = readFileSync(file, 'utf8').split('\n');
  const pid = Number(lines[0]);
  return Number.isInteger(pid) && pid > 0 ? { pid, port: Number(lines[3]) } : undefined;
}

/** False for a number that now belongs to another program, and for one that has ended but was not yet collected. */
export function isPostgres(pid: number): boolean {
  try {
    process.kill(pid, 0);
    const proc = `/proc/${pid}/cmdline`;
    const line = existsSync(proc) ? readFileSync(proc, 'utf8') : commandLine(pid);
    return line.includes('postgres');
  } catch {
    return false;
  }
}

function commandLine(pid: number): string {
  if (process.platform === 'win32') return execFileSync('tasklist', ['/fi', `pid eq ${pid}`], { encoding: 'utf8' });
  return execFileSync('ps', ['-p', String(pid), '-o', 'command='], { encoding: 'utf8' });
}

const ordinaryPatienceMs = { SIGINT: 20_000, SIGQUIT: 5_000, SIGKILL: 5_000 };

/** Fast shutdown first (sessions are ended, everything is written), the harder ones only when it does not end. */
export async function stopPostmaster(pid: number, patienceMs = ordinaryPatienceMs): Promise<void> {
  for (const signal of ['SIGINT', 'SIGQUIT', 'SIGKILL'] as const) {
    if (!isPostgres(pid)) return;
    process.kill(pid, signal);
    if (await until(() => !isPostgres(pid), patienceMs[signal])) return;
  }
  throw new Error(`The database process ${pid} did not end.`);
}

/** Asks again every 25 ms; true as soon as the answer is true, false when the time is over. */
export async function until(answer: () => boolean | Promise<boolean>, patienceMs: number): Promise<boolean> {
  const end = Date.now() + patienceMs;
  for (;;) {
    if (await answer()) return true;
    if (Date.now() > end) return false;
    await wait(25);
  }
}
