import { execFileSync } from 'node:child_process';
import { constants, readFileSync, statSync } from 'node:fs';
import { dirname, resolve } from 'node:path';

/** The operating-system account that PostgreSQL runs under. Empty when the current one will do. */
export type Account = { uid?: number; gid?: number };

/**
 * PostgreSQL refuses to run as root. When we are root, the owner of an existing data folder goes first (so that a
 * second start finds its own files), then the account `postgres`, which is made if it is missing, then `nobody`.
 */
export function databaseAccount(dataFolder: string): Account {
  if (process.getuid?.() !== 0) return {};
  const owner = statSync(dataFolder, { throwIfNoEntry: false });
  if (owner && owner.uid !== 0) return { uid: owner.uid, gid: owner.gid };
  return listedAccount('postgres') ?? madeAccount() ?? listedAccount('nobody') ?? { uid: 65534, gid: 65534 };
}

function listedAccount(name: string): Account | undefined {
  const row = readFileSync('/etc/passwd', 'utf8')
    .split('\n')
    .map((line) => line.split(':'))
    .find((fields) => fields[0] === name);
  return row ? { uid: Number(row[2]), gid: Number(row[3]) } : undefined;
}

function madeAccount(): Account | undefined {
  try {
    execFileSync('useradd', ['--system', '--user-group', '--no-create-home', 'postgres'], { stdio: 'ignore' });
    return listedAccount('postgres');
  } catch {
    return undefined;
  }
}

/** Whether the account can enter every folder down to this one. Folders like /root and those of mktemp are closed to others. */
export function canEnter(account: Account, folder: string): boolean {
  if (account.uid === undefined) return true;
  for (let at = resolve(folder); ; at = dirname(at)) {
    const stat = statSync(at, { throwIfNoEntry: false });
    if (stat && !mayEnter(account, stat)) return false;
    if (at === dirname(at)) return true;
  }
}

function mayEnter(account: Account, stat: { uid: number; gid: number; mode: number }): boolean {
  if (stat.uid === account.uid) return (stat.mode & constants.S_IXUSR) !== 0;
  if (stat.gid === account.gid) return (stat.mode & constants.S_IXGRP) !== 0;
  return (stat.mode & constants.S_IXOTH) !== 0;
}
