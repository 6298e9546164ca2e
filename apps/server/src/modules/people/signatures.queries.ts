import type { Input, Reply } from '@hubwright/contracts/operation';
import type { accessOperations } from '@hubwright/contracts/people/access-operations';
import { Inject, Injectable } from '@nestjs/common';
import { Reads } from '../../platform/database/reads.ts';

type Rows = Reply<typeof accessOperations.listSignatures>;

interface Row {
  entryId: string;
  at: Date;
  personId: string;
  personName: string;
  operation: string;
  signed: { meaning: string; by: string; signOffs?: { contentHash: string }[] };
  /** Where an older entry keeps the hash that it does not name beside its signature. */
  factsHash: string | null;
  authorisation: Rows['rows'][number]['authorisation'];
  subjects: { kind: string; id: string }[];
}

/** Signatures as the chained record keeps them: what a person signed, or who signed about a thing. */
@Injectable()
export class SignatureQueries {
  constructor(@Inject(Reads) private readonly reads: Reads) {}

  /** Newest first; `after` is the last entry of the page before. */
  async list(input: Input<typeof accessOperations.listSignatures>): Promise<Rows> {
    const found = await this.reads.sql<Row>(
      `SELECT e.id AS "entryId", e.at, e.person_id AS "personId", coalesce(p.display_name, '') AS "personName",
         e.command AS operation, e.body::jsonb -> 'signed' AS signed, e.body::jsonb #> '{who,authorisation}' AS authorisation,
         e.body::jsonb #>> '{facts,contentHash}' AS "factsHash",
         e.body::jsonb -> 'subjects' AS subjects
       FROM record_entries e LEFT JOIN people p ON p.id = e.person_id
       WHERE strpos(e.body, '"signed":{') > 0 AND e.body::jsonb ? 'signed'
         AND ($1::uuid IS NULL OR e.person_id = $1)
         AND ($2::text IS NULL OR $3::uuid IS NULL OR EXISTS (SELECT 1 FROM record_links l
           WHERE l.entry_id = e.id AND l.subject_kind = $2 AND l.subject_id = $3))
         AND ($4::uuid IS NULL OR (e.at, e.id) < (SELECT b.at, b.id FROM record_entries b WHERE b.id = $4))
       ORDER BY e.at DESC, e.id DESC LIMIT $5`,
      [
        input.personId ?? null,
        input.subjectKind ?? null,
        input.subjectId ?? null,
        /^[0-9a-f-]{36}$/.test(input.after ?? '') ? input.after : null,
        input.limit + 1,
      ],
    );
    const rows = found.slice(0, input.limit).map(({ signed, factsHash, at, subjects, ...row }) => ({
      ...row,
      at: at.toISOString(),
      meaning: signed.meaning,
      by: signed.by,
      subjects: subjects.map(({ kind, id }) => ({ kind, id })),
      contentHashes: hashesOf(signed, factsHash),
    }));
    return { rows, next: found.length > input.limit ? (rows.at(-1)?.entryId ?? null) : null };
  }
}

/** Signer and witness sign one content: its hash is said once. */
function hashesOf({ signOffs }: Row['signed'], factsHash: string | null): string[] {
  if (signOffs) return [...new Set(signOffs.map(({ contentHash }) => contentHash))];
  return factsHash === null ? [] : [factsHash];
}
