import type { Migration } from '../../../../../prisma/migrate.ts';

export const backupFormat = 'hubwright-backup 1';

/** First piece of a backup: read before anything is touched. */
export interface Beginning {
  readonly format: string;
  readonly at: string;
  readonly shop: string;
  readonly schema: readonly Pick<Migration, 'name' | 'checksum'>[];
  readonly postgres: string;
}
export interface TableSum {
  readonly rows: number;
  readonly bytes: number;
  readonly sha256: string;
}
/** Last piece but its signature: a backup without it was cut short. */
export interface Ending {
  /** SHA-256 of the beginning's text. */
  readonly beginning: string;
  readonly tables: Readonly<Record<string, TableSum>>;
  readonly files: readonly string[];
  readonly missingFiles: readonly string[];
  readonly anchor: { readonly sequence: number; readonly hash: string } | null;
  readonly key: string | null;
}

export const pieces = {
  beginning: 'beginning.json',
  ending: 'ending.json',
  signature: 'ending.signature',
  columns: (table: string) => `tables/${table}/columns.json`,
  rows: (table: string, chunk: number) => `tables/${table}/${String(chunk).padStart(6, '0')}`,
  file: (hash: string) => `files/${hash}`,
  key: (name: string) => `keys/${name}`,
} as const;

/** Files of the key folder: the shop's signing keys, and secrets such as the one that one-time codes are sealed under. */
export const isKeyName = (name: string) => /^([0-9a-f]{32}\.pem|[a-z][a-z-]{0,40}\.key)$/.test(name);

/**
 * Not kept: people sign in again, live events are told anew, files that no record names yet are sent again, due dates are worked
 * out again, and migrations come from the program.
 */
export const leftOut = [
  ...['_prisma_migrations', 'session', 'outbox', 'sign_in_attempts', 'staged_files'],
  ...['unit_due', 'due_state'],
];
