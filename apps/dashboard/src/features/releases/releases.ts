import type { Reply } from '@hubwright/contracts/operation';
import { releaseOperations } from '@hubwright/contracts/releases/operations';
import { addressOf } from '../../api/address.ts';
import { queryFor } from '../../api/query.ts';

export const checklistQuery = (workOrderId: string) => queryFor(releaseOperations.releaseChecklist, { workOrderId });
export const releasesOf = (workOrderId: string) => queryFor(releaseOperations.listReleases, { workOrderId, limit: 20 });
export type Checklist = Reply<typeof releaseOperations.releaseChecklist>;
export type Release = Reply<typeof releaseOperations.listReleases>['rows'][number];
export const releaseQuery = (releaseId: string) => queryFor(releaseOperations.release, { releaseId });
export type OpenItem = Checklist['open'][number];

export function pdfAddress(releaseId: string): string {
  return addressOf(releaseOperations.releasePdf, { releaseId });
}

/** Where an open item can be closed. */
export function hrefOf(item: OpenItem, workOrderId: string): string | undefined {
  const id = item.subject?.id;
  switch (item.subject?.kind) {
    case 'traveler':
      return `/travelers/${id}`;
    case 'finding':
      return `/findings?show=all&open=${id}`;
    case 'kit':
      return `/build/${workOrderId}`;
    case 'unit':
      return `/units/${id}`;
    case 'hold':
    case 'work-order':
      return `/work-orders/${workOrderId}`;
    default:
      return undefined;
  }
}

/** What is open, as the inspector calls it. */
export const kindWords: Record<OpenItem['kind'], string> = {
  stage: 'where the unit is',
  hold: 'holds',
  identity: 'serials not confirmed',
  step: 'steps to sign',
  finding: 'findings',
  kit: 'left over or missing',
  'over-and-above': 'customer has not answered',
  revision: 'manual revision',
  instrument: 'instruments',
  position: 'positions',
  'life-limit': 'life-limited parts',
  directive: 'directives',
  record: 'the record',
};

/** Open items of one kind together, in the order the checklist has them. */
export function byKind(open: readonly OpenItem[]): { kind: OpenItem['kind']; items: OpenItem[] }[] {
  const kinds = new Map<OpenItem['kind'], OpenItem[]>();
  for (const item of open) kinds.set(item.kind, [...(kinds.get(item.kind) ?? []), item]);
  return [...kinds].map(([kind, items]) => ({ kind, items }));
}
