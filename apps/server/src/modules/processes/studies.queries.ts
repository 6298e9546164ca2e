import type { Reply } from '@hubwright/contracts/operation';
import type { studyOperations } from '@hubwright/contracts/processes/study-operations';
import { RuleError } from '@hubwright/rules/errors';
import { averageAndRange, type StudyCell, studyAnova } from '@hubwright/rules/measurement';
import { Inject, Injectable } from '@nestjs/common';
import { found } from '../../platform/command/version.ts';
import { fromDbDate } from '../../platform/database/dates.ts';
import { Reads } from '../../platform/database/reads.ts';
import { cellsAsNumbers, type KeptCell } from './study-cells.ts';

type Studies = Reply<typeof studyOperations.listGaugeStudies>;

@Injectable()
export class StudyQueries {
  constructor(@Inject(Reads) private readonly reads: Reads) {}

  /** Only readings are kept: what they say is computed each time, at most for the newest twenty. */
  async list(instrumentId: string): Promise<Studies> {
    found(await this.reads.models.instrument.findUnique({ where: { id: instrumentId } }), 'This instrument');
    const rows = await this.reads.models.gaugeStudy.findMany({
      where: { instrumentId },
      orderBy: [{ heldOn: 'desc' }, { id: 'desc' }],
      take: 20,
    });
    const people = await this.reads.models.person.findMany({
      where: { id: { in: rows.map(({ recordedBy }) => recordedBy) } },
      select: { id: true, displayName: true },
    });
    return {
      rows: rows.map(({ cells: kept, ...row }) => {
        const cells = kept as unknown as KeptCell[];
        const tolerance = row.tolerance === null ? undefined : Number(row.tolerance);
        return {
          ...row,
          heldOn: fromDbDate(row.heldOn),
          recordedBy: people.find(({ id }) => id === row.recordedBy)?.displayName ?? '',
          cells: cells.map((cell) => ({ ...cell, readings: [...cell.readings] })),
          ...results(cellsAsNumbers(cells), tolerance),
        };
      }),
    };
  }
}

function results(cells: readonly StudyCell[], tolerance: number | undefined) {
  const { interaction, table, ...anova } = studyAnova(cells, tolerance);
  const f = Number.isFinite(interaction.f) ? interaction.f : null;
  return {
    averageAndRange: byRanges(cells, tolerance),
    anova: { ...anova, table: table.map((line) => ({ ...line })), interaction: { ...interaction, f } },
  };
}

/** The method has tables, and they end. */
function byRanges(cells: readonly StudyCell[], tolerance: number | undefined) {
  try {
    const { appraisers, ...study } = averageAndRange(cells, tolerance);
    return { ...study, appraisers: [...appraisers] };
  } catch (error) {
    if (error instanceof RuleError && error.code === 'study-too-large') return null;
    throw error;
  }
}
