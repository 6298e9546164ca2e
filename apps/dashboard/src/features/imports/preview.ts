import { type FleetKind, fleetFields, fleetTitles } from '@hubwright/contracts/imports/fleet-kinds';
import { fleetTableOperations } from '@hubwright/contracts/imports/fleet-operations';
import { type ImportKind, importFields, importTitles } from '@hubwright/contracts/imports/kinds';
import { importOperations } from '@hubwright/contracts/imports/operations';
import type { Reply } from '@hubwright/contracts/operation';
import { useCommand } from '../../api/command.ts';
import { usePages } from '../../api/pages.ts';

/** A table of the shop's own, or one of a customer. */
export type TableKind = ImportKind | FleetKind;
/** Whose tables: the shop's or a customer's. Both are looked at and taken over in the same way. */
export type Whose = 'shop' | 'customer';

type ShopPreview = Reply<typeof importOperations.previewImport>;
type CustomerPreview = Reply<typeof fleetTableOperations.previewFleetTable>;
export type Preview = ShopPreview | CustomerPreview;
export type PreviewRow = Preview['rows'][number];
export type Verdict = PreviewRow['verdict'];
export type Mapping = Readonly<Record<string, number>>;

export const tableFields = { ...importFields, ...fleetFields };
export const tableTitles = { ...importTitles, ...fleetTitles };

interface Asked {
  readonly whose: Whose;
  readonly importId: string;
  readonly mapping: Mapping | undefined;
  readonly only: Verdict | undefined;
}

/** What the table would change, read by these columns; while none were chosen, as before for such headings or as they say. */
export function usePreview({ whose, importId, mapping, only }: Asked) {
  const asked = mapping && Object.keys(mapping).length > 0 ? { mapping: mappingText(mapping) } : {};
  const op = whose === 'shop' ? importOperations.previewImport : fleetTableOperations.previewFleetTable;
  return usePages(op as typeof importOperations.previewImport, { importId, ...asked, ...(only ? { only } : {}) });
}

/** Takes the table over, or nothing of it. */
export function useApply(whose: Whose) {
  const shop = useCommand(importOperations.applyImport);
  const customer = useCommand(fleetTableOperations.applyFleetTable);
  return whose === 'shop' ? shop : customer;
}

function mappingText(mapping: Mapping): string {
  return Object.entries(mapping)
    .map(([field, column]) => `${field}:${column}`)
    .join(',');
}

/** How the template heads a field. */
export function titleOf(kind: TableKind, field: string): string {
  return tableFields[kind].find((one) => one.field === field)?.title ?? field;
}

/** The same columns, but this field read from another one, or from none. */
export function readFrom(mapping: Mapping, field: string, column: number | undefined): Mapping {
  const { [field]: _, ...others } = mapping;
  return column === undefined ? others : { ...others, [field]: column };
}
