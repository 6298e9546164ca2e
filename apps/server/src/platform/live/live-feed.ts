import { Inject, Injectable, type OnApplicationBootstrap, type OnApplicationShutdown } from '@nestjs/common';
import pg from 'pg';
import { Database } from '../database/client.ts';

/** What a dashboard is told: which nouns changed, and where in the stream this is. */
export interface LiveEvent {
  readonly id: string;
  readonly nouns: readonly string[];
  readonly subjects: readonly { kind: string; id: string }[];
}
interface OutboxRow {
  transaction: string;
  id: string;
  nouns: string[];
  subjects: { kind: string; id: string }[];
}
interface Position {
  readonly transaction: string;
  readonly id: string;
}

const channel = 'hubwright_live';
const coalesceMilliseconds = 15;
/** A write whose process died between commit and NOTIFY is still told within this time. */
const pollMilliseconds = 2_000;
const batch = 1_000;

/**
 * Tells open dashboards what changed. Commands write outbox rows in their transaction; after commit one coalesced NOTIFY
 * wakes every server process, which reads the new rows. Rows are read only once every older transaction has ended, so none
 * is skipped.
 */
@Injectable()
export class LiveFeed implements OnApplicationBootstrap, OnApplicationShutdown {
  private readonly listeners = new Set<(event: LiveEvent) => void>();
  private position: Position = { transaction: '0', id: '0' };
  private client: pg.Client | undefined;
  private timer: NodeJS.Timeout | undefined;
  private waiting: NodeJS.Timeout | undefined;
  private reading = false;
  private again = false;
  private stopped = false;

  constructor(@Inject(Database) private readonly database: Database) {}

  async onApplicationBootstrap(): Promise<void> {
    const { pool } = this.database;
    // Rows from a future transaction came with a restored database: they would hide what this one writes from now on.
    await pool.query('DELETE FROM outbox WHERE transaction >= pg_snapshot_xmax(pg_current_snapshot())::text::bigint');
    const { rows } = await pool.query<Position>(
      'SELECT transaction::text, id::text FROM outbox ORDER BY transaction DESC, id DESC LIMIT 1',
    );
    this.position = rows[0] ?? this.position;
    await this.listen();
    this.timer = setInterval(() => void this.readNew(), pollMilliseconds);
    this.timer.unref();
  }

  async onApplicationShutdown(): Promise<void> {
    this.stopped = true;
    clearInterval(this.timer);
    clearTimeout(this.waiting);
    await this.client?.end().catch(() => undefined);
  }

  /** After a commit: wakes all server processes, many commits with one message. */
  poke(): void {
    if (this.waiting || this.stopped) return;
    this.waiting = setTimeout(() => {
      this.waiting = undefined;
      this.database.pool.query(`NOTIFY ${channel}`).catch(() => undefined);
    }, coalesceMilliseconds);
  }

  subscribe(listener: (event: LiveEvent) => void): () => void {
    this.listeners.add(listener);
    return () => this.listeners.delete(listener);
  }

  /** Everything after an event the dashboard has seen; undefined when that is no longer kept, so that it reads all anew. */
  async since(id: string): Promise<LiveEvent[] | undefined> {
    const [transaction, row] = id.split('-');
    if (!/^\d{1,19}$/.test(transaction ?? '') || !/^\d{1,19}$/.test(row ?? '')) return undefined;
    const known = await this.database.pool.query('SELECT 1 FROM outbox WHERE transaction = $1 AND id = $2', [
      transaction,
      row,
    ]);
    if (known.rowCount === 0) return undefined;
    const rows = await this.rowsAfter({ transaction: transaction ?? '0', id: row ?? '0' });
    return rows.length === batch ? undefined : rows.map(toEvent);
  }

  private async listen(): Promise<void> {
    if (this.stopped) return;
    const client = new pg.Client({ connectionString: this.database.serverUrl });
    const lost = () => {
      client.removeAllListeners();
      client.on('error', () => undefined);
      if (!this.stopped) setTimeout(() => void this.listen(), 500).unref();
    };
    try {
      await client.connect();
      client.on('notification', () => void this.readNew());
      client.on('error', lost);
      client.on('end', lost);
      await client.query(`LISTEN ${channel}`);
      this.client = client;
      void this.readNew();
    } catch {
      lost();
    }
  }

  private async readNew(): Promise<void> {
    if (this.reading) {
      this.again = true;
      return;
    }
    this.reading = true;
    try {
      const rows = await this.rowsAfter(this.position);
      this.position = rows.at(-1) ?? this.position;
      for (const row of rows) for (const listener of this.listeners) listener(toEvent(row));
      if (rows.length === batch) this.again = true;
    } catch {
      // The database is away; the next poll tries again from the same position.
    } finally {
      this.reading = false;
    }
    if (this.again && !this.stopped) {
      this.again = false;
      setTimeout(() => void this.readNew(), 0);
    }
  }

  private async rowsAfter(after: Position): Promise<OutboxRow[]> {
    const { rows } = await this.database.pool.query<OutboxRow>(
      `SELECT transaction::text, id::text, nouns, subjects FROM outbox
       WHERE (transaction, id) > ($1::bigint, $2::bigint) AND transaction < pg_snapshot_xmin(pg_current_snapshot())::text::bigint
       ORDER BY transaction, id LIMIT ${batch}`,
      [after.transaction, after.id],
    );
    return rows;
  }
}

function toEvent(row: OutboxRow): LiveEvent {
  return { id: `${row.transaction}-${row.id}`, nouns: row.nouns, subjects: row.subjects };
}
