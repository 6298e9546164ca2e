import { type ImportKind, importFields } from '@hubwright/contracts/imports/kinds';
import { planKitLists } from './plan-kit-lists.ts';
import { planOpeningStock } from './plan-opening-stock.ts';
import { planParts } from './plan-parts.ts';
import { planPrices } from './plan-prices.ts';
import type { Mapping, Models, Plan, Table } from './table.ts';

const planners: Record<ImportKind, (models: Models, table: Table) => Promise<Plan>> = {
  parts: planParts,
  'opening-stock': planOpeningStock,
  prices: planPrices,
  'kit-lists': planKitLists,
};

/** What a table of a kind would do: the preview shows it, the command does it. */
export function planImport(kind: ImportKind, models: Models, table: Table): Promise<Plan> {
  return planners[kind](models, table);
}

/** Fields of the kind that a column of the table is read as; anything else in a mapping is dropped. */
export function usableMapping(kind: ImportKind, mapping: Mapping, width: number): Mapping {
  const fields = importFields[kind].map(({ field }) => field);
  return Object.fromEntries(Object.entries(mapping).filter(([field, at]) => fields.includes(field) && at < width));
}

/** Titles of needed fields that no column is read as. */
export function missingColumns(kind: ImportKind, mapping: Mapping): { field: string; title: string }[] {
  return importFields[kind].filter(({ field, required }) => required && mapping[field] === undefined);
}
