import type { dueDateOperations } from '@hubwright/contracts/due-dates/operations';
import type { Reply } from '@hubwright/contracts/operation';
import { Paper } from '../../platform/print/paper.ts';

type Row = Reply<typeof dueDateOperations.comingDue>['rows'][number];
type Group = 'customer' | 'model' | 'month';

export interface DueListPrinted {
  readonly group: Group;
  readonly shopName: string;
  readonly at: Date;
  readonly today: string;
  /** Whether the list goes on after these rows. */
  readonly more: boolean;
}

const groupOf: Record<Group, (row: Row) => string> = {
  customer: ({ customer }) => customer.name,
  model: ({ unit }) => unit.designation,
  month: ({ dueOn }) => dueOn.slice(0, 7),
};

/** The due list on paper, a heading a group, overdue first within each. */
export function printDueList(rows: readonly Row[], printed: DueListPrinted): Promise<Buffer> {
  const { group, shopName, at, today, more } = printed;
  const paper = new Paper({ title: 'Coming due', shopName, at, foot: `Coming due, as of ${today}` });
  paper.paragraph(
    `As of ${today}. These are likely dates and no permission to fly until then. The current approved manual and the operator’s authority decide.`,
  );
  if (more) paper.paragraph(`The first ${rows.length} units only: the list as CSV holds all.`);
  if (rows.length === 0) paper.paragraph('No unit comes due in this time.');
  for (const [name, own] of grouped(rows, groupOf[group])) {
    paper.heading(`${name} (${own.length})`);
    paper.table(
      [
        { head: 'Unit', width: 110 },
        { head: 'Serial', width: 60 },
        { head: group === 'customer' ? 'Aircraft' : 'Customer', width: 85 },
        { head: 'Likely due', width: 62 },
        { head: 'Between', width: 62 },
        { head: 'What governs', width: '*' },
      ],
      own.map((row) => [
        ...[row.unit.designation, row.unit.serial],
        group === 'customer' ? (row.registration ?? '') : row.customer.name,
        row.overdue ? `${row.dueOn} overdue` : row.dueOn,
        row.earliest === row.latest ? '' : `${row.earliest} ${row.latest}`,
        `${row.governedWhat || row.governedBy}${row.requirement === null ? '' : `, ${row.requirement}`}`,
      ]),
    );
  }
  return paper.finish();
}

function grouped(rows: readonly Row[], nameOf: (row: Row) => string): [string, Row[]][] {
  const groups = new Map<string, Row[]>();
  for (const row of rows) groups.set(nameOf(row), [...(groups.get(nameOf(row)) ?? []), row]);
  return [...groups.entries()].toSorted(([a], [b]) => a.localeCompare(b));
}
