import { type ImportKind, importFields } from '@hubwright/contracts/imports/kinds';
import { importOperations } from '@hubwright/contracts/imports/operations';
import type { Reply } from '@hubwright/contracts/operation';
import { keepPreviousData, useQuery } from '@tanstack/react-query';
import { queryFor } from '../../api/query.ts';

export type Preview = Reply<typeof importOperations.previewImport>;
export type PreviewRow = Preview['rows'][number];
export type Verdict = PreviewRow['verdict'];
export type Mapping = Readonly<Record<string, number>>;

/** What the table would change, read by these columns; by its headings while none were chosen. */
export function usePreview(importId: string, mapping: Mapping | undefined, only: Verdict | undefined) {
  const asked = mapping && Object.keys(mapping).length > 0 ? { mapping: mappingText(mapping) } : {};
  return useQuery({
    ...queryFor(importOperations.previewImport, { importId, limit: 200, ...asked, ...(only ? { only } : {}) }),
    placeholderData: keepPreviousData,
  });
}

function mappingText(mapping: Mapping): string {
  return Object.entries(mapping)
    .map(([field, column]) => `${field}:${column}`)
    .join(',');
}

/** How the template heads a field. */
export function titleOf(kind: ImportKind, field: string): string {
  return importFields[kind].find((one) => one.field === field)?.title ?? field;
}

/** The same columns, but this field read from another one, or from none. */
export function readFrom(mapping: Mapping, field: string, column: number | undefined): Mapping {
  const { [field]: _, ...others } = mapping;
  return column === undefined ? others : { ...others, [field]: column };
}
