import type { Input, Reply } from '@hubwright/contracts/operation';
import type { QuoteKind, QuoteLineKind, QuoteState, quoteOperations } from '@hubwright/contracts/quotes/operations';
import { daysBetween } from '@hubwright/rules/dates';
import { Inject, Injectable, StreamableFile } from '@nestjs/common';
import { CLOCK, type Clock } from '../../platform/command/clock.ts';
import { ShopZone } from '../../platform/command/shop-zone.ts';
import { found } from '../../platform/command/version.ts';
import { fromDbDate } from '../../platform/database/dates.ts';
import { Reads } from '../../platform/database/reads.ts';
import { FILES, type FileStore } from '../../platform/files/store.ts';
import { priceLines, totalsOf } from './price.ts';

const withNames = { workOrder: { select: { id: true, number: true, customer: { select: { id: true, name: true } } } } };
const milliseconds = 86_400_000;

@Injectable()
export class QuotesQueries {
  constructor(
    @Inject(Reads) private readonly reads: Reads,
    @Inject(FILES) private readonly files: FileStore,
    @Inject(CLOCK) private readonly clock: Clock,
    @Inject(ShopZone) private readonly zone: ShopZone,
  ) {}

  async list(input: Input<typeof quoteOperations.listQuotes>): Promise<Reply<typeof quoteOperations.listQuotes>> {
    const { workOrderId, kind, state, after, limit } = input;
    const rows = await this.reads.models.quote.findMany({
      where: {
        ...(workOrderId ? { workOrderId } : {}),
        ...(kind ? { kind } : {}),
        ...(state ? { state } : {}),
        ...(after ? { id: { lt: after } } : {}),
      },
      include: withNames,
      // Ids are made in the order of time.
      orderBy: { id: 'desc' },
      take: limit + 1,
    });
    const shown = rows.slice(0, limit);
    return { rows: shown.map((row) => this.row(row)), next: rows.length > limit ? (shown.at(-1)?.id ?? null) : null };
  }

  async one(quoteId: string): Promise<Reply<typeof quoteOperations.quote>> {
    const quote = found(
      await this.reads.models.quote.findUnique({
        where: { id: quoteId },
        include: { ...withNames, lines: { orderBy: { sequence: 'asc' } }, chasers: { orderBy: { dueOn: 'asc' } } },
      }),
      'This quote',
    );
    const today = await this.zone.today(this.clock.now());
    return {
      ...quote,
      ...this.row(quote),
      lines: quote.lines.map((line) => ({ ...line, kind: line.kind as QuoteLineKind })),
      chasers: quote.chasers.map((chaser) => ({
        id: chaser.id,
        note: chaser.note,
        dueOn: fromDbDate(chaser.dueOn),
        sentAt: chaser.sentAt?.toISOString() ?? null,
        overdue: quote.state === 'sent' && chaser.sentAt === null && fromDbDate(chaser.dueOn) <= today,
      })),
    };
  }

  /** The bytes the customer got, checked against their hash. */
  async document(quoteId: string): Promise<StreamableFile> {
    const quote = found(await this.reads.models.quote.findUnique({ where: { id: quoteId } }), 'This quote');
    const bytes = await this.files.read(found(quote.fileHash, 'The document of a quote that was not sent'));
    return new StreamableFile(bytes, {
      type: 'application/pdf',
      disposition: `inline; filename="${quote.number}.pdf"`,
      length: bytes.length,
    });
  }

  async price(input: Input<typeof quoteOperations.priceWork>): Promise<Reply<typeof quoteOperations.priceWork>> {
    const today = await this.zone.today(this.clock.now());
    const { lines, gaps, currency } = await priceLines(this.reads.models, { ...input, today });
    const shop = found(await this.reads.models.shopProfile.findUnique({ where: { id: 1 } }), 'The shop profile');
    const nothing = { subtotalMinor: 0, taxMinor: 0, totalMinor: 0 };
    return {
      currency,
      taxPercent: shop.taxPercent,
      lines: lines.map((line, index) => ({ ...line, sequence: index + 1 })),
      ...(lines.length > 0 ? totalsOf(lines, shop) : nothing),
      missing: gaps.map((gap) => gap.detail),
    };
  }

  async overdue(
    input: Input<typeof quoteOperations.overdueAnswers>,
  ): Promise<Reply<typeof quoteOperations.overdueAnswers>> {
    const today = await this.zone.today(this.clock.now());
    const due = new Date(`${today}T00:00:00Z`);
    const { after, limit } = input;
    const quotes = await this.reads.models.quote.findMany({
      where: {
        state: 'sent',
        OR: [
          { chasers: { some: { sentAt: null, dueOn: { lte: due } } } },
          { chasers: { every: { dueOn: { lte: due } } } },
        ],
        ...(after ? { id: { gt: after } } : {}),
      },
      include: { ...withNames, chasers: { orderBy: { dueOn: 'asc' } } },
      orderBy: { id: 'asc' },
      take: limit + 1,
    });
    const shown = quotes.slice(0, limit);
    const rows = shown.map((quote) => {
      const chaser = quote.chasers.find((one) => one.sentAt === null);
      const oldest = chaser ?? quote.chasers.at(-1);
      return {
        quote: this.row(quote),
        chaser: chaser ? { id: chaser.id, dueOn: fromDbDate(chaser.dueOn) } : null,
        daysOverdue: oldest ? daysBetween(fromDbDate(oldest.dueOn), today) : 0,
        silenceDue: chaser === undefined,
      };
    });
    return { rows, next: quotes.length > limit ? (shown.at(-1)?.id ?? null) : null };
  }

  private row(quote: QuoteWithNames) {
    const { id, number, revision, currency, totalMinor, capMinor, promiseDays, decidedByName, version } = quote;
    const { customer, ...workOrder } = quote.workOrder;
    const days = (since: Date) => Math.floor((this.clock.now().getTime() - since.getTime()) / milliseconds);
    return {
      ...{ id, number, revision, currency, totalMinor, capMinor, promiseDays, decidedByName, version },
      workOrder,
      customer,
      kind: quote.kind as QuoteKind,
      state: quote.state as QuoteState,
      validUntil: fromDbDate(quote.validUntil),
      sentAt: quote.sentAt?.toISOString() ?? null,
      daysOut: quote.sentAt ? days(quote.sentAt) : null,
      decidedAt: quote.decidedAt?.toISOString() ?? null,
    };
  }
}

interface QuoteWithNames {
  readonly id: string;
  readonly number: string;
  readonly workOrder: { id: string; number: string; customer: { id: string; name: string } };
  readonly kind: string;
  readonly revision: number;
  readonly state: string;
  readonly currency: string;
  readonly totalMinor: number;
  readonly capMinor: number | null;
  readonly validUntil: Date;
  readonly promiseDays: number | null;
  readonly sentAt: Date | null;
  readonly decidedAt: Date | null;
  readonly decidedByName: string | null;
  readonly version: number;
}
