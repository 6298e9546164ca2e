import { areaOf, type Damage, type Disposition } from '@hubwright/contracts/findings/areas';
import type { FindingRow, findingOperations } from '@hubwright/contracts/findings/operations';
import type { PartClass } from '@hubwright/contracts/manuals/words';
import type { Input, Reply } from '@hubwright/contracts/operation';
import { Inject, Injectable } from '@nestjs/common';
import { found } from '../../platform/command/version.ts';
import { Reads } from '../../platform/database/reads.ts';
import { type FindingSqlRow, findingsSql } from './findings.sql.ts';

@Injectable()
export class FindingQueries {
  constructor(@Inject(Reads) private readonly reads: Reads) {}

  async list(
    input: Input<typeof findingOperations.listFindings>,
  ): Promise<Reply<typeof findingOperations.listFindings>> {
    const rows = await this.reads.sql<FindingSqlRow>(findingsSql, [
      null,
      input.workOrderId ?? null,
      input.state,
      input.after ?? null,
      input.limit + 1,
    ]);
    const shown = rows.slice(0, input.limit);
    return { rows: shown.map(findingRow), next: rows.length > input.limit ? (shown.at(-1)?.number ?? null) : null };
  }

  async one({ findingId }: Input<typeof findingOperations.finding>): Promise<FindingRow> {
    const [row] = await this.reads.sql<FindingSqlRow>(findingsSql, [findingId, null, 'all', null, 1]);
    return findingRow(found(row, 'This finding'));
  }
}

function findingRow(row: FindingSqlRow): FindingRow {
  const area = areaOf(row.part_class as PartClass, row.area);
  const costs = row.labour_minor > 0 || row.parts.length > 0;
  return {
    id: row.id,
    number: row.number,
    workOrder: { id: row.work_order_id, number: row.work_order_number, customer: row.customer },
    traveler: {
      id: row.traveler_id,
      number: row.traveler_number,
      title: row.traveler_title,
      partClass: row.part_class as PartClass,
      position: row.position,
    },
    area: row.area,
    areaTitle: area?.title ?? row.area,
    critical: area?.critical ?? true,
    damage: row.damage as Damage,
    place: row.place,
    description: row.description,
    spot: row.spot,
    corrosionClass: row.corrosion_class,
    raisedBy: row.raised_by,
    raisedAt: row.raised_at.toISOString(),
    disposition: row.disposition as Disposition | null,
    dispositionNote: row.disposition_note,
    decidedBy: row.decided_by,
    decidedAt: row.decided_at?.toISOString() ?? null,
    stepId: row.step_id,
    labourMinor: row.labour_minor,
    overAndAbove: row.over_and_above,
    answer: costs ? answerOf(row.quote_states) : 'not-needed',
    parts: row.parts,
    superseded: row.superseded.map(earlier),
    steps: row.steps as FindingRow['steps'],
    done: row.done,
    version: row.version,
  };
}

/** PostgreSQL writes instants inside JSON with an offset; ours end in Z. */
function earlier(row: FindingRow['superseded'][number]): FindingRow['superseded'][number] {
  const utc = (instant: string) => new Date(instant).toISOString();
  return { ...row, decidedAt: utc(row.decidedAt), supersededAt: utc(row.supersededAt) };
}

function answerOf(states: readonly string[]): FindingRow['answer'] {
  if (states.includes('approved')) return 'approved';
  if (states.some((state) => state === 'draft' || state === 'sent' || state === 'silent')) return 'waiting';
  return states.includes('declined') ? 'declined' : 'not-asked';
}
