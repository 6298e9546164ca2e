import { append, canonicalJson, type Entry } from '@hubwright/rules/chain';
import type { Tx } from '../database/client.ts';
import type { SignedContent, Subject } from './command.ts';
import type { RequestIdentity } from './receipts.ts';

const noHash = '0'.repeat(64);

/** All that is kept of one acknowledged command. */
export interface RecordBody {
  readonly id: string;
  readonly at: string;
  readonly command: string;
  readonly who: { readonly person: string; readonly roles: readonly string[]; readonly authorisation?: unknown };
  readonly signed?: { readonly meaning: string; readonly by: string; readonly signOffs?: readonly SignedContent[] };
  readonly subjects: readonly Subject[];
  readonly input: unknown;
  readonly facts: unknown;
  readonly reason?: string;
}

interface Head {
  readonly kind: string;
  readonly id: string;
  readonly sequence: number;
  readonly hash: string;
}

/**
 * Writes the entry, one link in the chain of each subject, the outbox row and the receipt's reply: two statements, whatever
 * the number of subjects. Rows of heads are locked in one order by the first.
 */
export async function writeRecord(
  tx: Tx,
  body: RecordBody,
  end: { request: RequestIdentity; reply: unknown; touches: readonly string[] },
): Promise<void> {
  const heads = await lockHeads(tx, body.subjects);
  const plain = JSON.parse(JSON.stringify(body)) as RecordBody;
  const links = heads.map((head) => {
    const previous: Entry | undefined =
      head.sequence === 0 ? undefined : { sequence: head.sequence, previous: noHash, hash: head.hash, body: null };
    const link = append(previous, plain);
    return { kind: head.kind, id: head.id, sequence: link.sequence, previous: link.previous, hash: link.hash };
  });
  const subjects = plain.subjects.map(({ kind, id }) => ({ kind, id }));
  await tx.$executeRaw`
    WITH entry AS (
      INSERT INTO record_entries (id, at, command, person_id, body)
      VALUES (${plain.id}::uuid, ${new Date(plain.at)}, ${plain.command}, ${plain.who.person}::uuid, ${canonicalJson(plain)})
    ), new_links AS (
      SELECT * FROM jsonb_to_recordset(${JSON.stringify(links)}::jsonb) AS l(kind text, id uuid, sequence int, previous text, hash text)
    ), linked AS (
      INSERT INTO record_links (subject_kind, subject_id, sequence, previous, hash, entry_id)
      SELECT kind, id, sequence, previous, hash, ${plain.id}::uuid FROM new_links
    ), moved AS (
      UPDATE record_heads h SET sequence = l.sequence, hash = l.hash
      FROM new_links l WHERE h.subject_kind = l.kind AND h.subject_id = l.id
    ), told AS (
      INSERT INTO outbox (nouns, subjects) VALUES (${[...end.touches]}::text[], ${JSON.stringify(subjects)}::jsonb)
    )
    UPDATE receipts SET status = 200, reply = ${JSON.stringify(end.reply)}::jsonb
    WHERE person_id = ${end.request.personId}::uuid AND key = ${end.request.key}`;
}

async function lockHeads(tx: Tx, subjects: readonly Subject[]): Promise<Head[]> {
  const wanted = [...new Map(subjects.map(({ kind, id }) => [`${kind} ${id}`, { kind, id }])).entries()]
    .sort(([a], [b]) => (a < b ? -1 : 1))
    .map(([, subject]) => subject);
  // Inserting or touching the head locks it, also when it does not exist yet.
  return tx.$queryRaw<Head[]>`
    INSERT INTO record_heads AS h (subject_kind, subject_id, sequence, hash)
    SELECT kind, id, 0, ${noHash} FROM jsonb_to_recordset(${JSON.stringify(wanted)}::jsonb) AS s(kind text, id uuid)
    ON CONFLICT (subject_kind, subject_id) DO UPDATE SET sequence = h.sequence
    RETURNING subject_kind AS kind, subject_id AS id, sequence, hash`;
}
