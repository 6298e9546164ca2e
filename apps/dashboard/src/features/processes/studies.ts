import type { Reply, Sent } from '@hubwright/contracts/operation';
import { studyOperations } from '@hubwright/contracts/processes/study-operations';
import { queryFor } from '../../api/query.ts';

export type Study = Reply<typeof studyOperations.listGaugeStudies>['rows'][number];
export type Cell = Sent<typeof studyOperations.recordGaugeStudy>['cells'][number];

export const studiesQuery = (instrumentId: string) => queryFor(studyOperations.listGaugeStudies, { instrumentId });

/**
 * Lines as they come from a spreadsheet or are typed: appraiser, part, then the readings, with tabs, semicolons or commas
 * between. What cannot be read is told by its line.
 */
export function cellsFrom(text: string): { cells: Cell[]; wrong: string[] } {
  const cells: Cell[] = [];
  const wrong: string[] = [];
  for (const [index, line] of text.split(/\r?\n/).entries()) {
    if (line.trim() === '') continue;
    const [appraiser = '', part = '', ...readings] = line.split(/[\t;,]/).map((piece) => piece.trim());
    const isRead = readings.length > 0 && readings.every((reading) => /^-?\d{1,12}(\.\d{1,8})?$/.test(reading));
    if (appraiser && part && isRead) cells.push({ appraiser, part, readings });
    else wrong.push(`Line ${index + 1}: appraiser, part, then readings as numbers`);
  }
  return { cells, wrong };
}

/** What the share of the gauge in the whole spread means: at most 10 % good, up to 30 % for some uses (AIAG MSA, 4th ed.). */
export function gaugeWords(percent: number): { state: 'passed' | 'hold' | 'stop'; word: string } {
  const share = `${percent.toFixed(1)} % of the spread is the gauge`;
  if (percent <= 10) return { state: 'passed', word: share };
  return percent <= 30
    ? { state: 'hold', word: `${share}: good enough for some uses` }
    : { state: 'stop', word: `${share}: it hides the parts` };
}
