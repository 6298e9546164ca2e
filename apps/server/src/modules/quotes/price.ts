import { Problem, type ProblemType } from '@hubwright/contracts/problems';
import type { QuoteKind } from '@hubwright/contracts/quotes/operations';
import { addMoney, type Money, taxOn } from '@hubwright/rules/money';
import { found } from '../../platform/command/version.ts';
import { directiveLines, directivesNotQuoted } from './directive-lines.ts';
import { type FindingToPrice, findingLines, findingsOf } from './price-findings.ts';
import { type Models, type PricedLine, partLine } from './priced-line.ts';

/** Why a quote cannot be written as it is. */
export interface Gap {
  readonly problem: ProblemType;
  readonly detail: string;
}

export interface Totals {
  readonly subtotalMinor: number;
  readonly taxMinor: number;
  readonly totalMinor: number;
}

/** What the shop charges for a work order at today's cost: lines of one kind of quote, and what is missing to write it. */
export async function priceLines(
  models: Models,
  asked: { workOrderId: string; kind: QuoteKind; findingIds?: readonly string[] | undefined; today: string },
): Promise<{ currency: string; lines: PricedLine[]; gaps: Gap[] }> {
  const workOrder = found(
    await models.workOrder.findUnique({ where: { id: asked.workOrderId }, include: { model: true } }),
    'This work order',
  );
  const shop = found(await models.shopProfile.findUnique({ where: { id: 1 } }), 'The shop profile');
  const { currency } = shop;
  const findings = asked.kind === 'estimate' ? [] : await findingsOf(models, workOrder.id);
  if (asked.kind === 'over-and-above') {
    const directives = await directivesNotQuoted(models, { workOrderId: workOrder.id, today: asked.today });
    return { currency, ...overAndAbove(findings, { chosen: asked.findingIds, directives, currency }) };
  }
  const labour = await labourLine(models, workOrder);
  const gaps: Gap[] = [
    ...('problem' in labour ? [labour] : []),
    ...findings.filter((finding) => finding.disposition === null).map(undecided),
  ];
  const lines = [
    ...('problem' in labour ? [] : [labour]),
    ...(await kitLines(models, workOrder.id, currency)),
    ...(await directiveLines(models, { workOrderId: workOrder.id, today: asked.today })),
    ...findings.flatMap((finding) => findingLines(finding, currency)),
  ];
  return { currency, lines, gaps };
}

function overAndAbove(
  findings: readonly FindingToPrice[],
  asked: { chosen: readonly string[] | undefined; directives: readonly PricedLine[]; currency: string },
) {
  const { chosen, directives, currency } = asked;
  const waiting = findings.filter((finding) => !finding.paid && finding.hasCost);
  const quoted = chosen ? waiting.filter((finding) => chosen.includes(finding.id)) : waiting;
  const strange = chosen?.filter((id) => !quoted.some((finding) => finding.id === id)) ?? [];
  const gaps: Gap[] = [
    ...(strange.length > 0
      ? [{ problem: 'finding-not-quotable' as const, detail: `${strange.length} of the findings cannot be quoted` }]
      : []),
    ...quoted.filter((finding) => finding.disposition === null).map(undecided),
    ...(quoted.length === 0 && directives.length === 0
      ? [
          {
            problem: 'nothing-to-quote' as const,
            detail: 'Every finding with a cost, and every open directive, is in an approved quote',
          },
        ]
      : []),
  ];
  return { lines: [...quoted.flatMap((finding) => findingLines(finding, currency)), ...directives], gaps };
}

function undecided(finding: FindingToPrice): Gap {
  return { problem: 'finding-undecided', detail: `${finding.number} has no disposition yet` };
}

async function labourLine(
  models: Models,
  workOrder: { modelId: string; scope: string; model: { designation: string } },
): Promise<PricedLine | Gap> {
  const { modelId, scope, model } = workOrder;
  const rate = await models.flatRate.findUnique({ where: { modelId_scope: { modelId, scope } } });
  if (!rate)
    return { problem: 'flat-rate-missing', detail: `${model.designation} has no flat rate for the scope ${scope}` };
  return {
    ...{
      kind: 'labour',
      description: `Flat-rate labour, ${scope.replaceAll('-', ' ')}`,
      partId: null,
      findingId: null,
    },
    ...{ quantity: 1, unitPrice: '', amountMinor: rate.labourMinor, taxable: true },
  };
}

/** Mandatory new parts of the kit at today's price; of as-needed lines only their least is mandatory. */
async function kitLines(models: Models, workOrderId: string, currency: string): Promise<PricedLine[]> {
  const lines = await models.kitLine.findMany({
    where: { kit: { workOrderId, state: { not: 'cancelled' } }, source: 'new', findingId: null },
    include: { part: true },
    orderBy: [{ kitId: 'asc' }, { sequence: 'asc' }],
  });
  return lines.flatMap(({ part, position, quantity, minimum }) => {
    const pieces = minimum ?? quantity;
    return pieces === 0 ? [] : [partLine({ part, position, quantity: pieces, currency })];
  });
}

/** Sum, tax by the shop's rounding, and their sum. Throws `nothing-to-quote` without lines. */
export function totalsOf(
  lines: readonly PricedLine[],
  shop: { currency: string; taxPercent: string; taxRounding: string },
): Totals {
  const amount = (line: PricedLine): Money => ({ currency: shop.currency, minor: line.amountMinor });
  const [first, ...others] = lines.map(amount);
  if (!first) throw new Problem('nothing-to-quote', 'There is no line to charge for');
  const taxable = lines.filter((line) => line.taxable).map(amount);
  const rounding = shop.taxRounding === 'line' ? 'per-line' : 'on-total';
  const subtotal = addMoney(first, ...others);
  const tax = taxable.length > 0 ? taxOn(taxable, shop.taxPercent, rounding) : { currency: shop.currency, minor: 0 };
  return { subtotalMinor: subtotal.minor, taxMinor: tax.minor, totalMinor: addMoney(subtotal, tax).minor };
}
