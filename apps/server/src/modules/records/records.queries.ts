import type { Reply } from '@hubwright/contracts/operation';
import type { recordOperations } from '@hubwright/contracts/records/operations';
import { Inject, Injectable } from '@nestjs/common';
import { Backups } from '../../platform/backup/backups.ts';
import { CLOCK, type Clock } from '../../platform/command/clock.ts';
import { Reads } from '../../platform/database/reads.ts';
import type { PurgeBody } from '../../platform/records/check-purges.ts';

type Keeping = Reply<typeof recordOperations.recordKeeping>;
const hour = 3_600_000;

@Injectable()
export class RecordsQueries {
  constructor(
    @Inject(Reads) private readonly reads: Reads,
    @Inject(Backups) private readonly backups: Backups,
    @Inject(CLOCK) private readonly clock: Clock,
  ) {}

  async keeping(): Promise<Keeping> {
    const { anchor, shopKey, purge, shopProfile } = this.reads.models;
    const [anchors, keys, purges, shop, sizes] = await Promise.all([
      anchor.findMany({ orderBy: { sequence: 'desc' }, take: 1, select: { sequence: true, at: true, hash: true } }),
      shopKey.findMany({ orderBy: { sequence: 'desc' }, take: 50 }),
      purge.findMany({ orderBy: { at: 'desc' }, take: 50, select: { body: true } }),
      shopProfile.findUniqueOrThrow({ where: { id: 1 }, select: { retentionRules: true, version: true } }),
      this.reads.sql<{ entries: number; bytes: string }>(sizesSql),
    ]);
    return {
      ...(await this.backupFacts()),
      anchor: anchors[0] ? { ...anchors[0], at: anchors[0].at.toISOString() } : null,
      keys: keys.map(({ id, at, previousSignature }) => ({
        id,
        since: at.toISOString(),
        signedByTheOneBefore: previousSignature !== null,
      })),
      entries: sizes[0]?.entries ?? 0,
      databaseBytes: Number(sizes[0]?.bytes ?? 0),
      retentionRules: shop.retentionRules as Keeping['retentionRules'],
      version: shop.version,
      purges: purges.map(({ body }) => purgeRow(JSON.parse(body) as PurgeBody)),
    };
  }

  private async backupFacts() {
    const kept = await this.backups.kept();
    const { everyHours, failure, isWriting } = this.backups;
    const [newest] = kept;
    const age = newest ? this.clock.now().getTime() - newest.at.getTime() : Number.POSITIVE_INFINITY;
    return {
      newestBackup: newest ? { at: newest.at.toISOString(), bytes: newest.bytes } : null,
      backupCount: kept.length,
      backupEveryHours: everyHours ?? null,
      // One that is late by more than a tenth of its time is told.
      backupOverdue: everyHours !== undefined && age > everyHours * hour * 1.1,
      backupFailure: failure ?? null,
      backupRunning: isWriting,
    };
  }
}

/** The count is the planner's: exact enough for a page, and it costs nothing on a long history. */
const sizesSql = `SELECT greatest(reltuples, 0)::int AS entries, pg_database_size(current_database())::text AS bytes
  FROM pg_class WHERE oid = 'record_entries'::regclass`;

function purgeRow({ id, at, what, by, policy }: PurgeBody): Keeping['purges'][number] {
  return { id, at, what, by, policy };
}
