import type { QuoteLineKind } from '@hubwright/contracts/quotes/operations';
import { multiplyPrice } from '@hubwright/rules/money';
import type { Reads } from '../../platform/database/reads.ts';

/** Both a transaction and the read-only models answer this. */
export type Models = Reads['models'];

/** A line before it is written. `unitPrice` is a decimal in the currency's main unit, `amountMinor` in its smallest. */
export interface PricedLine {
  readonly kind: QuoteLineKind;
  readonly description: string;
  readonly partId: string | null;
  readonly findingId: string | null;
  /** The directive a line is for, and the part it concerns. */
  readonly directiveId?: string;
  readonly itemId?: string;
  readonly quantity: number;
  readonly unitPrice: string;
  readonly amountMinor: number;
  readonly taxable: boolean;
}

/** One line of new parts at today's price. */
export function partLine(wanted: {
  part: { id: string; number: string; description: string; unitPrice: string };
  position: string;
  quantity: number;
  currency: string;
}): PricedLine {
  const { part, quantity } = wanted;
  return {
    kind: 'part',
    description: `${part.number} ${part.description}, ${wanted.position}`,
    partId: part.id,
    findingId: null,
    quantity,
    unitPrice: part.unitPrice,
    amountMinor: multiplyPrice(part.unitPrice, quantity, wanted.currency).minor,
    taxable: true,
  };
}
