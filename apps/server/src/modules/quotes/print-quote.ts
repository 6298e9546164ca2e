import type { QuoteKind } from '@hubwright/contracts/quotes/operations';
import { minorDigits } from '@hubwright/rules/money';
import { found } from '../../platform/command/version.ts';
import type { Tx } from '../../platform/database/client.ts';
import { fromDbDate } from '../../platform/database/dates.ts';
import { Paper } from '../../platform/print/paper.ts';

const titles: Record<QuoteKind, string> = {
  estimate: 'Estimate',
  firm: 'Quote',
  'over-and-above': 'Over-and-above quote',
};

const asks: Record<QuoteKind, string> = {
  estimate:
    'This is what we expect before the unit is opened. Please approve its evaluation up to an amount you name. Work beyond the evaluation starts only after you approve the firm quote.',
  firm: 'This is what we found. Please approve or decline it by name. Repair starts only after your approval.',
  'over-and-above': 'This turned up after your approval. The extra work starts only after you approve this quote.',
};

/** An amount in the smallest unit as people write it, without grouping: 12345 USD → `123.45 USD`. */
export function moneyText(minor: number, currency: string): string {
  const digits = minorDigits(currency);
  const text = String(Math.abs(minor)).padStart(digits + 1, '0');
  const whole = digits === 0 ? text : `${text.slice(0, -digits)}.${text.slice(-digits)}`;
  return `${minor < 0 ? '-' : ''}${whole} ${currency}`;
}

async function readForPrint(tx: Tx, quoteId: string) {
  const quote = await tx.quote.findUnique({
    where: { id: quoteId },
    include: {
      lines: { orderBy: { sequence: 'asc' } },
      workOrder: { include: { customer: true, aircraft: true, model: true, unit: true } },
    },
  });
  return found(quote, 'This quote');
}
type Printed = Awaited<ReturnType<typeof readForPrint>>;

/** The quote as the customer gets it, as PDF. The same quote sent at the same moment gives the same bytes. */
export async function printQuote(tx: Tx, quoteId: string, sent: { sentAt: Date; sentOn: string }): Promise<Buffer> {
  const quote = await readForPrint(tx, quoteId);
  const shop = found(await tx.shopProfile.findUnique({ where: { id: 1 } }), 'The shop profile');
  const { caution } = shop.recordStatements as { caution: string };
  const kind = quote.kind as QuoteKind;
  const paper = new Paper({
    title: `${titles[kind]} ${quote.number}`,
    shopName: shop.name,
    at: sent.sentAt,
    foot: caution,
  });
  paper
    .facts([
      ['Date', sent.sentOn],
      ['Valid until', fromDbDate(quote.validUntil)],
      ['Revision', String(quote.revision)],
      ...unitFacts(quote),
    ])
    .paragraph(asks[kind])
    .heading('Work and parts');
  lines(paper, quote);
  paper.facts([
    ['Subtotal', moneyText(quote.subtotalMinor, quote.currency)],
    [`Tax ${quote.taxPercent} %`, moneyText(quote.taxMinor, quote.currency)],
    ['Total', moneyText(quote.totalMinor, quote.currency)],
    [
      'Ready',
      quote.promiseDays === null
        ? ''
        : `${quote.promiseDays === 1 ? 'One day' : `${quote.promiseDays} days`} after your approval, if no more is found`,
    ],
  ]);
  paper.paragraph(`${shop.name}, certificate ${shop.certificateNumber}`);
  return paper.finish();
}

function unitFacts({ workOrder }: Printed): [string, string][] {
  const { customer, aircraft, model, unit } = workOrder;
  return [
    ['Customer', `${customer.name} (${customer.code})`],
    ['Work order', workOrder.number],
    ['Unit', `${model.maker} ${model.designation}, serial ${unit.serial ?? 'not readable yet'}`],
    ['Aircraft', aircraft ? `${aircraft.registration}, ${aircraft.airframe}, ${aircraft.engine}` : ''],
    ['Scope', workOrder.scope.replaceAll('-', ' ')],
  ];
}

function lines(paper: Paper, quote: Printed): void {
  paper.table(
    [
      { head: 'Item', width: 34 },
      { head: 'Description', width: '*' },
      { head: 'Pieces', width: 46, side: 'right' },
      { head: 'Each', width: 70, side: 'right' },
      { head: 'Amount', width: 90, side: 'right' },
    ],
    quote.lines.map((line) => [
      String(line.sequence),
      line.taxable ? line.description : `${line.description} (no tax)`,
      line.unitPrice === '' ? '' : String(line.quantity),
      line.unitPrice,
      moneyText(line.amountMinor, quote.currency),
    ]),
  );
}
