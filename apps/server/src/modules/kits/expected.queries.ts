import type { expectedOperations } from '@hubwright/contracts/kits/expected-operations';
import type { Input, Reply } from '@hubwright/contracts/operation';
import { type PartRate, type Share, toldRate } from '@hubwright/rules/foreseen';
import { Inject, Injectable } from '@nestjs/common';
import { found } from '../../platform/command/version.ts';
import { Reads } from '../../platform/database/reads.ts';
import { expectedOf } from './expected-words.ts';
import { type ReturnRate, unreadSql } from './foreseen-rows.ts';
import { KitCover } from './kit-cover.ts';

type Answer = Reply<typeof expectedOperations.expectedDemand>;
type Units = Reply<typeof expectedOperations.expectedUnits>;
type Behind = Units['rows'][number];

const unitsSql = `
  SELECT i.id, m.designation, coalesce(i.serial, i.provisional_name, 'serial not read') AS serial, coalesce(c.name, 'nobody known') AS customer,
    d.due_on::text AS "dueOn", d.governed_what AS why
  FROM serialized_items i JOIN unit_due d ON d.unit_id = i.id LEFT JOIN unit_models m ON m.id = d.model_id LEFT JOIN customers c ON c.id = d.customer_id
  WHERE i.id = ANY($1::uuid[])`;
const ordersSql = `
  SELECT w.id, w.number, m.designation || ' ' || coalesce(u.serial, u.provisional_name, '') AS unit, c.name AS customer
  FROM work_orders w JOIN unit_models m ON m.id = w.model_id JOIN serialized_items u ON u.id = w.unit_id JOIN customers c ON c.id = w.customer_id
  WHERE w.id = ANY($1::uuid[])`;
const partSql = `SELECT id, number, description, issue_unit AS "issueUnit" FROM parts WHERE id = $1::uuid`;
const modelsSql = 'SELECT id, designation FROM unit_models WHERE id = ANY($1::uuid[])';

/** What is expected of a part, and the units, rates and records behind the number. */
@Injectable()
export class ExpectedQueries {
  constructor(
    @Inject(Reads) private readonly reads: Reads,
    @Inject(KitCover) private readonly cover: KitCover,
  ) {}

  async expected({ partId }: Input<typeof expectedOperations.expectedDemand>): Promise<Answer> {
    const part = found((await this.reads.sql<Answer['part']>(partSql, [partId]))[0], 'This part');
    const state = await this.cover.kept();
    const { foresight } = this.cover;
    const cover = state.foreseenOf(partId);
    const { rates = [], returning } = foresight?.records ?? {};
    return {
      part,
      months: cover ? cover.months.map((month) => ({ ...month })) : [],
      returning: returnWords(returning),
      findings: await this.findings(rates.filter((rate) => rate.part === partId)),
      unread: await this.reads.sql<Answer['unread'][number]>(unreadSql, [partId, state.basis.today]),
      summary: cover
        ? expectedOf(cover).sentences.join(' ') || `Next to none of ${part.number} is expected.`
        : `No unit that comes due and no unit that waits for its teardown is expected to need ${part.number}.`,
    };
  }

  /** By how much each counts for; a place in that order is where the next page begins. */
  async units({ partId, after, limit }: Input<typeof expectedOperations.expectedUnits>): Promise<Units> {
    found((await this.reads.sql<Answer['part']>(partSql, [partId]))[0], 'This part');
    const state = await this.cover.kept();
    const { foresight } = this.cover;
    const shares = state.foreseenOf(partId) && foresight ? await foresight.behind(partId) : [];
    const sorted = [...shares].sort((one, other) => other.quantity - one.quantity);
    const from = Number(after ?? 0) || 0;
    const to = from + limit;
    return { rows: await this.named(sorted.slice(from, to)), next: to < sorted.length ? String(to) : null };
  }

  private async named(shares: readonly Share[]): Promise<Behind[]> {
    const ids = (of: 'unit' | 'workOrder') => [...new Set(shares.flatMap((share) => share[of] ?? []))];
    const [units, orders] = await Promise.all([
      this.reads.sql<NonNullable<Behind['unit']>>(unitsSql, [ids('unit')]),
      this.reads.sql<NonNullable<Behind['workOrder']>>(ordersSql, [ids('workOrder')]),
    ]);
    const [unitOf, orderOf] = [byId(units), byId(orders)];
    return shares.map(({ kind, unit, workOrder, probability, each, quantity }) => ({
      ...{ kind, probability, each, quantity },
      unit: unitOf.get(unit ?? '') ?? null,
      workOrder: orderOf.get(workOrder ?? '') ?? null,
    }));
  }

  private async findings(rates: readonly PartRate[]): Promise<Answer['findings']> {
    const models = await this.reads.sql<{ id: string; designation: string }>(modelsSql, [
      rates.map(({ model }) => model),
    ]);
    const named = byId(models);
    return rates.map((rate) => {
      const model = named.get(rate.model)?.designation ?? '';
      const { events, units, prior } = rate;
      const sentence = `New ones went into ${events} of ${units} ${model} finished here beyond the list; parts of its class are at ${percent(prior.mean)} overall, which counts like ${Math.round(prior.weight)} more units.`;
      return { model, ...toldRate(rate), events, asked: units, sentence };
    });
  }
}

function returnWords(rate: ReturnRate | undefined): Answer['returning'] {
  const { mean, low, high, came, asked } = rate ?? { mean: 0, low: 0, high: 1, came: 0, asked: 0 };
  const sentence =
    asked === 0
      ? `No unit on record has come due yet: ${percent(mean)} are taken to come here, as is usual.`
      : `${came} of ${asked} units that came due in five years came here; held against what is usual, ${percent(mean)} are expected to.`;
  return { mean, low, high, events: came, asked, sentence };
}

const percent = (share: number) => `${Math.round(share * 100)} %`;

function byId<T extends { id: string }>(rows: readonly T[]): Map<string, T> {
  return new Map(rows.map((row) => [row.id, row]));
}
