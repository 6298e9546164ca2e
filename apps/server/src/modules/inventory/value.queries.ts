import type { valueOperations } from '@hubwright/contracts/inventory/value-operations';
import type { Input, Reply } from '@hubwright/contracts/operation';
import { Problem } from '@hubwright/contracts/problems';
import { addMonths } from '@hubwright/rules/dates';
import { atLotCost, averageOf, idleness, inMoney, sumOf, turns } from '@hubwright/rules/valuation';
import { Inject, Injectable } from '@nestjs/common';
import { CLOCK, type Clock, dateIn } from '../../platform/command/clock.ts';
import { Reads } from '../../platform/database/reads.ts';
import { type FlowRow, flowsSql, lotCostSql } from './stock-flows.ts';
import { type PartValue, valueOfPart } from './value-of-part.ts';

type Answer = Reply<typeof valueOperations.stockValue>;
type Row = Answer['rows'][number];

interface Settings {
  readonly zone: string;
  readonly currency: string;
  readonly since: string;
  readonly slowFrom: string;
  readonly deadFrom: string;
}
/** One part with what it is worth, exact: rows are rounded where they are shown, totals once from these. */
interface Valued {
  readonly row: Row;
  readonly value: PartValue;
  readonly byLot: string;
}
interface Whole {
  readonly key: string;
  readonly asOf: Date;
  readonly settings: Settings;
  readonly parts: readonly Valued[];
}

const mostKept = 3;

/** What stock is worth. The ledger is followed once for each state of it, however many ask. */
@Injectable()
export class ValueQueries {
  /** By key, the newest last; a few, since people ask for different times. */
  private readonly latest = new Map<string, Promise<Whole>>();

  constructor(
    @Inject(Reads) private readonly reads: Reads,
    @Inject(CLOCK) private readonly clock: Clock,
  ) {}

  async stockValue(input: Input<typeof valueOperations.stockValue>): Promise<Answer> {
    const { asOf, settings, parts } = await this.whole(input.since);
    const search = input.search?.toLowerCase();
    const shown = parts.filter(
      ({ row }) =>
        (search === undefined || `${row.part.number} ${row.part.description}`.toLowerCase().includes(search)) &&
        (input.idle === undefined || (row.idle === input.idle && row.onHand > 0)) &&
        (input.counted === undefined || row.found + row.lost > 0) &&
        (input.after === undefined || row.part.number > input.after),
    );
    const page = shown.slice(0, input.limit).map(({ row }) => row);
    const { currency, since, slowFrom, deadFrom } = settings;
    return {
      rows: page,
      next: shown.length > input.limit ? (page.at(-1)?.part.number ?? null) : null,
      ...{ currency, since, slowFrom, deadFrom, asOf: asOf.toISOString(), totals: totalsOf(parts, currency) },
    };
  }

  private async whole(since: string | undefined): Promise<Whole> {
    const settings = await this.settings(since);
    const [newest] = await this.reads.sql<{ key: string }>(
      "SELECT coalesce(max(sequence), 0) || ' ' || (SELECT count(*) FROM parts) AS key FROM movements",
    );
    const key = `${newest?.key} ${Object.values(settings).join(' ')}`;
    const known = await this.latest.get(key)?.catch(() => undefined);
    if (known) return known;
    const whole = this.compute(key, settings);
    this.latest.delete(key);
    this.latest.set(key, whole);
    const [oldest] = this.latest.keys();
    if (this.latest.size > mostKept && oldest !== undefined) this.latest.delete(oldest);
    return whole;
  }

  private async settings(since: string | undefined): Promise<Settings> {
    const shop = await this.reads.models.shopProfile.findUnique({ where: { id: 1 } });
    const zone = shop?.zone ?? 'UTC';
    const today = dateIn(zone, this.clock.now());
    if (since !== undefined && since > today)
      throw new Problem('invalid-input', `${since} is still to come`, {}, [
        { pointer: '/since', detail: 'Ask from a day that has been' },
      ]);
    return {
      ...{ zone, currency: shop?.currency ?? 'USD', since: since ?? addMonths(today, -12) },
      slowFrom: addMonths(today, -(shop?.slowAfterMonths ?? 12)),
      deadFrom: addMonths(today, -(shop?.deadAfterMonths ?? 24)),
    };
  }

  private async compute(key: string, settings: Settings): Promise<Whole> {
    const asOf = this.clock.now();
    const [named, lots, values] = await Promise.all([
      this.reads.sql<Row['part']>(
        'SELECT id, number, description, issue_unit AS "issueUnit" FROM parts ORDER BY number',
      ),
      this.reads.sql<{ part_id: string; unit_price: string; quantity: number }>(lotCostSql),
      this.values(settings),
    ]);
    const byPart = new Map<string, { quantity: number; unitPrice: string }[]>();
    for (const { part_id, quantity, unit_price } of lots)
      byPart.set(part_id, [...(byPart.get(part_id) ?? []), { quantity, unitPrice: unit_price }]);
    const parts = named.flatMap((part) => {
      const value = values.get(part.id);
      return value ? [valued(part, { value, lots: byPart.get(part.id) ?? [] }, settings)] : [];
    });
    return { key, asOf, settings, parts };
  }

  /** Part by part, in the memory of one part. */
  private async values(settings: Settings): Promise<ReadonlyMap<string, PartValue>> {
    const values = new Map<string, PartValue>();
    let rows: FlowRow[] = [];
    const close = () => rows[0] && values.set(rows[0].part_id, valueOfPart(rows, settings));
    for await (const row of this.reads.each<FlowRow>(flowsSql)) {
      if (rows[0] && rows[0].part_id !== row.part_id) {
        close();
        rows = [];
      }
      rows.push(row);
    }
    close();
    return values;
  }
}

function valued(
  part: Row['part'],
  { value, lots }: { value: PartValue; lots: readonly { quantity: number; unitPrice: string }[] },
  settings: Settings,
): Valued {
  const { held, before, flowed, found, lost } = value;
  const minor = (exact: string) => inMoney(exact, settings.currency).minor;
  const byLot = atLotCost(lots);
  const lastDay = value.lastIssued ?? value.firstIn ?? settings.since;
  return {
    value,
    byLot,
    row: {
      ...{ part, found, lost },
      onHand: lots.reduce((sum, { quantity }) => sum + quantity, 0),
      byAverageMinor: held ? minor(held.value) : null,
      average: held ? (averageOf(held) ?? null) : null,
      byLotMinor: minor(byLot),
      idle: idleness(lastDay, settings),
      lastIssuedOn: value.lastIssued ?? null,
      usedMinor: minor(flowed.used),
      turns: held && before ? (turns({ used: flowed.used, before: before.value, after: held.value }) ?? null) : null,
      shrinkageMinor: minor(flowed.lost) - minor(flowed.found),
    },
  };
}

function totalsOf(parts: readonly Valued[], currency: string): Answer['totals'] {
  const minor = (values: readonly string[]) => inMoney(sumOf(values), currency).minor;
  const worth = ({ value, byLot }: Valued) => value.held?.value ?? byLot;
  const idle = (state: string) => parts.filter(({ row }) => row.idle === state && row.onHand > 0);
  const used = sumOf(parts.map(({ value }) => value.flowed.used));
  const [before, after] = [sumOf(parts.map(({ value }) => value.before?.value ?? '0')), sumOf(parts.map(worth))];
  return {
    byAverageMinor: minor(parts.map(worth)),
    byLotMinor: minor(parts.map(({ byLot }) => byLot)),
    slowMinor: minor(idle('slow').map(worth)),
    deadMinor: minor(idle('dead').map(worth)),
    usedMinor: minor([used]),
    shrinkageMinor:
      minor(parts.map(({ value }) => value.flowed.lost)) - minor(parts.map(({ value }) => value.flowed.found)),
    turns: turns({ used, before, after }) ?? null,
    notFollowed: parts.filter(({ value }) => !value.held).length,
  };
}
