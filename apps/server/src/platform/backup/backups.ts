import { mkdir, readdir, rm, stat } from 'node:fs/promises';
import { join } from 'node:path';
import { Inject, Injectable, Logger, type OnApplicationBootstrap, type OnApplicationShutdown } from '@nestjs/common';
import { CLOCK, type Clock } from '../command/clock.ts';
import { Database } from '../database/client.ts';
import { writeBackup } from './write-backup.ts';

export interface BackupSchedule {
  readonly folder: string;
  readonly everyHours: number;
  readonly passphrase?: string | undefined;
}
export interface BackupPlaces extends BackupSchedule {
  readonly filesFolder: string;
  readonly keysFolder: string;
}
export const BACKUP_PLACES = Symbol('BackupPlaces');

/** A backup that is whole. */
export interface KeptBackup {
  readonly file: string;
  readonly at: Date;
  readonly bytes: number;
}

const minute = 60_000;
const newestKept = 14;
const backupLock = 4_720_120;
const ending = '.hubwright-backup';

/** The name of a backup says when it was taken. */
export function backupName(at: Date): string {
  return `${at.toISOString().slice(0, 19).replaceAll(':', '')}Z${ending}`;
}

/** Whole backups in a folder, newest first. */
export async function keptBackups(folder: string): Promise<KeptBackup[]> {
  const names = (await readdir(folder).catch(() => []))
    .filter((name) => name.endsWith(ending))
    .sort()
    .reverse();
  return Promise.all(
    names.map(async (file) => {
      const { size, mtime } = await stat(join(folder, file));
      return { file, at: mtime, bytes: size };
    }),
  );
}

/** Writes backups by itself when the newest is too old, one server at a time, and keeps the newest fourteen. */
@Injectable()
export class Backups implements OnApplicationBootstrap, OnApplicationShutdown {
  private readonly log = new Logger('backups');
  private timer: NodeJS.Timeout | undefined;
  private writing: Promise<void> | undefined;
  /** Why the last one failed; undefined when it did not. */
  failure: string | undefined;

  constructor(
    @Inject(Database) private readonly database: Database,
    @Inject(CLOCK) private readonly clock: Clock,
    @Inject(BACKUP_PLACES) private readonly places: BackupPlaces | null,
  ) {}

  onApplicationBootstrap(): void {
    if (!this.places) return;
    this.timer = setInterval(() => void this.writeWhenDue(), 10 * minute);
    this.timer.unref();
  }

  async onApplicationShutdown(): Promise<void> {
    clearInterval(this.timer);
    await this.writing;
  }

  get everyHours(): number | undefined {
    return this.places?.everyHours;
  }

  async kept(): Promise<KeptBackup[]> {
    return this.places ? keptBackups(this.places.folder) : [];
  }

  get isWriting(): boolean {
    return this.writing !== undefined;
  }

  /** Asked for by a person: whatever the age of the newest. Answers at once; the status tells how it ended. */
  begin(): void {
    this.writing ??= this.write('now').finally(() => {
      this.writing = undefined;
    });
  }

  /** Errors are logged and shown on the status page, not thrown: it is tried again. */
  async writeWhenDue(): Promise<void> {
    this.writing ??= this.write('when due').finally(() => {
      this.writing = undefined;
    });
    await this.writing;
  }

  private async write(when: 'now' | 'when due'): Promise<void> {
    const { places } = this;
    const at = this.clock.now();
    if (!places || (when === 'when due' && !(await this.isDue(at)))) return;
    const client = await this.database.pool.connect();
    try {
      const { rows } = await client.query<{ free: boolean }>('SELECT pg_try_advisory_lock($1) AS free', [backupLock]);
      if (!rows[0]?.free) return;
      await mkdir(places.folder, { recursive: true, mode: 0o700 });
      await writeBackup(join(places.folder, backupName(at)), { ...places, url: this.database.serverUrl, at });
      for (const old of (await this.kept()).slice(newestKept)) await rm(join(places.folder, old.file));
      this.failure = undefined;
    } catch (error) {
      this.failure = error instanceof Error ? error.message : String(error);
      this.log.warn(`no backup: ${this.failure}`);
    } finally {
      await client.query('SELECT pg_advisory_unlock($1)', [backupLock]).catch(() => undefined);
      client.release();
    }
  }

  private async isDue(at: Date): Promise<boolean> {
    const newest = (await this.kept())[0];
    return !newest || at.getTime() - newest.at.getTime() >= (this.places?.everyHours ?? 0) * 60 * minute;
  }
}
