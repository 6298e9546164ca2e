import type { ForeseenKind, Foresight, PartRate, Share } from '@hubwright/rules/foreseen';
import type { WorkerThread } from '../../platform/jobs/worker.ts';
import type { Ask } from './ask.ts';
import type { News } from './changed-parts.ts';
import type { Basis } from './cover-state.ts';
import type { ForeseeJob } from './foresee.worker.ts';
import type { ForeseenPart } from './foreseen-cover.ts';
import { dueStampSql, foreseeInput, partRatesOf, type ReturnRate, returnRateOf } from './foreseen-rows.ts';

type Worker = WorkerThread<ForeseeJob, Foresight | Share[]>;

/**
 * What is foreseen of every part, kept: read again when due dates or anything about orders, findings or quotes changed, and worked out again
 * only where what was read is different. Answers which parts came out differently.
 */
export class ForeseenState {
  private text = '';
  private stamp = '';
  private byPart = new Map<string, ForeseenPart>();
  private rates: readonly PartRate[] = [];
  private returning: ReturnRate = { mean: 0, low: 0, high: 1, came: 0, asked: 0 };

  constructor(
    private readonly worker: Worker,
    private readonly of: { basis: Basis; zone: string },
  ) {}

  part(partId: string): ForeseenPart | undefined {
    return this.byPart.get(partId);
  }

  parts(): string[] {
    return [...this.byPart.keys()];
  }

  /** What it was worked out from: how often parts are found to be needed, and how often units come back. */
  get records(): { rates: readonly PartRate[]; returning: ReturnRate } {
    return { rates: this.rates, returning: this.returning };
  }

  /** The units behind what is foreseen of one part. */
  async behind(partId: string): Promise<Share[]> {
    return (await this.worker.run({ text: this.text, part: partId })) as Share[];
  }

  /** From nothing. */
  async start(ask: Ask): Promise<void> {
    await this.readRates(ask);
    await this.read(ask);
  }

  /** Parts of which something else is foreseen now; reads nothing where neither news nor a due date speaks of a change. */
  async next(ask: Ask, news: News['foreseen']): Promise<string[]> {
    if (news === 'lists') await this.readRates(ask);
    const [row] = await ask<{ stamp: string }>(dueStampSql, []);
    return news !== 'same' || row?.stamp !== this.stamp ? this.read(ask) : [];
  }

  private async readRates(ask: Ask): Promise<void> {
    const { basis, zone } = this.of;
    this.rates = await partRatesOf(ask, { today: basis.today, zone });
  }

  private async read(ask: Ask): Promise<string[]> {
    // The stamp first: what changes between the two is read once more.
    this.stamp = (await ask<{ stamp: string }>(dueStampSql, []))[0]?.stamp ?? '';
    this.returning = await returnRateOf(ask, this.of.basis.today);
    const { basis } = this.of;
    const input = await foreseeInput(ask, { basis, parts: this.rates, returnRate: this.returning });
    const text = JSON.stringify(input);
    if (text === this.text) return [];
    this.text = text;
    return this.replace((await this.worker.run({ text })) as Foresight);
  }

  private replace({ rows, units }: Foresight): string[] {
    const fresh = new Map<string, { rows: Foresight['rows']; units: Record<ForeseenKind, number> }>();
    for (const row of rows) {
      const known = fresh.get(row.part);
      if (known) known.rows.push(row);
      else fresh.set(row.part, { rows: [row], units: { due: 0, finding: 0 } });
    }
    for (const { part, kind, count } of units) {
      const known = fresh.get(part);
      if (known) known.units[kind] = count;
    }
    const before = this.byPart;
    this.byPart = fresh;
    const differs = (part: string) => JSON.stringify(before.get(part)) !== JSON.stringify(fresh.get(part));
    return [...new Set([...before.keys(), ...fresh.keys()])].filter(differs);
  }
}
