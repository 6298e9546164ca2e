import { append, canonicalJson, type Entry } from '@hubwright/rules/chain';
import pg from 'pg';

/** Where a chain does not hold. */
export interface ChainFault {
  readonly subject: string;
  readonly sequence: number;
  readonly reason: string;
}
export interface ChainReport {
  readonly chains: number;
  readonly links: number;
  readonly faults: readonly ChainFault[];
}
interface LinkRow {
  kind: string;
  id: string;
  sequence: number;
  previous: string;
  hash: string;
  body: string | null;
  command: string | null;
  person: string | null;
  at: Date | null;
  head_sequence: number | null;
  head_hash: string | null;
}

const pageSize = 5_000;

/** Recomputes every chain from its first entry and compares heads; reads in pages, so memory does not grow with history. */
export async function verifyRecords(url: string): Promise<ChainReport> {
  const client = new pg.Client({ connectionString: url });
  await client.connect();
  try {
    await client.query('BEGIN ISOLATION LEVEL REPEATABLE READ READ ONLY');
    const walk = new Walk();
    for (let after: LinkRow | undefined; ; ) {
      const { rows } = await client.query<LinkRow>(pageSql, [
        after?.kind ?? '',
        after?.id ?? '00000000-0000-0000-0000-000000000000',
        after?.sequence ?? 0,
      ]);
      for (const row of rows) walk.see(row);
      after = rows.at(-1);
      if (rows.length < pageSize) break;
    }
    walk.end();
    const lost = await client.query<LinkRow>(lostSql);
    for (const row of lost.rows) walk.fault(row, 'the chain of this subject is gone');
    const loose = await client.query<{ id: string }>(
      'SELECT id FROM record_entries e WHERE NOT EXISTS (SELECT 1 FROM record_links l WHERE l.entry_id = e.id) LIMIT 1000',
    );
    for (const row of loose.rows)
      walk.fault({ kind: 'entry', id: row.id, sequence: 0 }, 'the entry belongs to no chain');
    return { chains: walk.chains, links: walk.links, faults: walk.faults };
  } finally {
    await client.end();
  }
}

const pageSql = `
  SELECT l.subject_kind AS kind, l.subject_id AS id, l.sequence, l.previous, l.hash, e.body, e.command, e.person_id AS person, e.at, h.sequence AS head_sequence, h.hash AS head_hash
  FROM record_links l
  LEFT JOIN record_entries e ON e.id = l.entry_id
  LEFT JOIN record_heads h ON h.subject_kind = l.subject_kind AND h.subject_id = l.subject_id
  WHERE (l.subject_kind, l.subject_id, l.sequence) > ($1, $2::uuid, $3)
  ORDER BY l.subject_kind, l.subject_id, l.sequence LIMIT ${pageSize}`;

const lostSql = `
  SELECT h.subject_kind AS kind, h.subject_id AS id, h.sequence FROM record_heads h
  WHERE h.sequence > 0 AND NOT EXISTS (SELECT 1 FROM record_links l WHERE l.subject_kind = h.subject_kind AND l.subject_id = h.subject_id)`;

/** One pass over all links in chain order. */
class Walk {
  chains = 0;
  links = 0;
  readonly faults: ChainFault[] = [];
  private last: LinkRow | undefined;

  see(row: LinkRow): void {
    const continues = this.last?.kind === row.kind && this.last.id === row.id;
    if (!continues) {
      this.end();
      this.chains += 1;
    }
    this.links += 1;
    const before = continues ? this.last : undefined;
    const expected = (before?.sequence ?? 0) + 1;
    if (row.sequence !== expected) this.fault(row, `entry ${expected} is missing before this one`);
    else if (row.body === null) this.fault(row, 'the entry of this link is gone');
    else if (linkHash(before, row.body) !== row.hash) this.fault(row, 'the entry or its link was changed');
    else if (!columnsAgree(row)) this.fault(row, 'a column beside the entry was changed');
    this.last = row;
  }

  /** Closes the chain just walked: its head must name its last link. */
  end(): void {
    const { last } = this;
    if (last && (last.head_sequence !== last.sequence || last.head_hash !== last.hash))
      this.fault(last, 'entries after this one are missing, or the head was changed');
    this.last = undefined;
  }

  fault(row: Pick<LinkRow, 'kind' | 'id' | 'sequence'>, reason: string): void {
    this.faults.push({ subject: `${row.kind} ${row.id}`, sequence: row.sequence, reason });
  }
}

function linkHash(before: LinkRow | undefined, body: string): string | undefined {
  const previous: Entry | undefined = before && {
    sequence: before.sequence,
    previous: before.previous,
    hash: before.hash,
    body: null,
  };
  try {
    return append(previous, JSON.parse(body)).hash;
  } catch {
    return undefined;
  }
}

/** The columns used for searching must say what the hashed text says. */
function columnsAgree(row: LinkRow): boolean {
  const body = JSON.parse(row.body ?? 'null') as { command: string; at: string; who: { person: string } };
  return (
    canonicalJson(body) === row.body &&
    body.command === row.command &&
    body.who.person === row.person &&
    body.at === row.at?.toISOString()
  );
}
