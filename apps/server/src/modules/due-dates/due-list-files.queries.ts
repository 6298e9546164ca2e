import { Readable } from 'node:stream';
import type { fleetOperations } from '@hubwright/contracts/due-dates/fleet-operations';
import type { dueDateOperations } from '@hubwright/contracts/due-dates/operations';
import type { Input, Reply } from '@hubwright/contracts/operation';
import { csvLine, csvMark } from '@hubwright/rules/csv';
import { Inject, Injectable, StreamableFile } from '@nestjs/common';
import { CLOCK, type Clock } from '../../platform/command/clock.ts';
import { ShopZone } from '../../platform/command/shop-zone.ts';
import { found } from '../../platform/command/version.ts';
import { Reads } from '../../platform/database/reads.ts';
import { ComingDueQueries } from './coming-due.queries.ts';
import { printDueList } from './print-due-list.ts';

type Asked = Omit<Input<typeof dueDateOperations.comingDue>, 'limit' | 'after'>;
type Row = Reply<typeof dueDateOperations.comingDue>['rows'][number];

const pageSize = 1_000;
/** More than this nobody reads on paper; the paper says so. */
const mostPrinted = 500;

const columns: readonly (readonly [head: string, value: (row: Row) => string | number | null])[] = [
  ['unit', ({ unit }) => unit.designation],
  ['maker', ({ unit }) => unit.maker],
  ['serial', ({ unit }) => unit.serial],
  ['customer', ({ customer }) => customer.name],
  ['aircraft', ({ registration }) => registration],
  ['position', ({ position }) => position],
  ['likely due', ({ dueOn }) => dueOn],
  ['earliest', ({ earliest }) => earliest],
  ['latest', ({ latest }) => latest],
  ['days left', ({ daysLeft }) => daysLeft],
  ['overdue', ({ overdue }) => (overdue ? 'yes' : 'no')],
  ['hours left', ({ hoursLeftTenths }) => (hoursLeftTenths === 'unknown' ? hoursLeftTenths : hoursLeftTenths / 10)],
  ['governed by', ({ governedBy }) => governedBy],
  ['what governs', ({ governedWhat }) => governedWhat],
  ['the interval is', ({ requirement }) => requirement ?? 'not said'],
  ['reckoned from', ({ basis }) => basis],
];

/** The due list as a file: whole, in constant memory, or printed as far as paper makes sense. */
@Injectable()
export class DueListFileQueries {
  constructor(
    @Inject(Reads) private readonly reads: Reads,
    @Inject(CLOCK) private readonly clock: Clock,
    @Inject(ShopZone) private readonly zone: ShopZone,
    @Inject(ComingDueQueries) private readonly coming: ComingDueQueries,
  ) {}

  csv(asked: Asked): StreamableFile {
    const disposition = 'attachment; filename="coming-due.csv"';
    return new StreamableFile(Readable.from(this.lines(asked)), { type: 'text/csv; charset=utf-8', disposition });
  }

  async pdf({ group, ...asked }: Input<typeof fleetOperations.dueListPdf>): Promise<StreamableFile> {
    const { rows, next } = await this.coming.list({ ...asked, limit: mostPrinted });
    const shop = found(await this.reads.models.shopProfile.findUnique({ where: { id: 1 } }), 'The shop profile');
    const now = this.clock.now();
    const bytes = await printDueList(rows, {
      ...{ group, shopName: shop.name, at: now, today: await this.zone.today(now) },
      more: next !== null,
    });
    return new StreamableFile(bytes, {
      type: 'application/pdf',
      disposition: 'inline; filename="coming-due.pdf"',
    });
  }

  /** Page after page by the list’s own order: nothing waits for a whole list, however long. */
  private async *lines(asked: Asked): AsyncGenerator<string> {
    yield csvMark + csvLine(columns.map(([head]) => head));
    let after: Input<typeof dueDateOperations.comingDue>['after'];
    do {
      const { rows, next } = await this.coming.list({ ...asked, limit: pageSize, ...(after ? { after } : {}) });
      yield rows.map((row) => csvLine(columns.map(([, value]) => value(row)))).join('');
      after = (next ?? undefined) as typeof after;
    } while (after !== undefined);
  }
}
