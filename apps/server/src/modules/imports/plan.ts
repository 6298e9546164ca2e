import type { ImportKind } from '@hubwright/contracts/imports/kinds';
import { planKitLists } from './plan-kit-lists.ts';
import { planOffers } from './plan-offers.ts';
import { planOpeningStock } from './plan-opening-stock.ts';
import { planParts } from './plan-parts.ts';
import { planPrices } from './plan-prices.ts';
import type { Models, Plan, Table } from './table.ts';

const planners: Record<ImportKind, (models: Models, table: Table) => Promise<Plan>> = {
  parts: planParts,
  'opening-stock': planOpeningStock,
  prices: planPrices,
  offers: planOffers,
  'kit-lists': planKitLists,
};

/** What a table of a kind would do: the preview shows it, the command does it. */
export function planImport(kind: ImportKind, models: Models, table: Table): Promise<Plan> {
  return planners[kind](models, table);
}
