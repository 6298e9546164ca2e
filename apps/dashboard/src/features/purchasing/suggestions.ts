import type { Reply } from '@hubwright/contracts/operation';
import type { buyingOperations } from '@hubwright/contracts/purchasing/buying-operations';
import type { Wanted } from './order-draft.ts';

export type Suggestion = Reply<typeof buyingOperations.listSuggestions>['rows'][number];
export type WhyStep = Suggestion['because'][number];

/** What can go into one order: the suggestions of one supplier. Those nobody sells stand last. */
export interface SupplierGroup {
  readonly supplier: Suggestion['supplier'];
  readonly rows: readonly Suggestion[];
  readonly cost: number;
}

export function groupsOf(rows: readonly Suggestion[]): readonly SupplierGroup[] {
  const groups = new Map<string, Suggestion[]>();
  for (const row of rows) {
    const key = row.supplier?.id ?? '';
    groups.set(key, [...(groups.get(key) ?? []), row]);
  }
  return [...groups.values()]
    .map((each) => ({
      supplier: each[0]?.supplier ?? null,
      rows: each,
      cost: each.reduce((sum, { cost }) => sum + cost, 0),
    }))
    .sort((one, other) => Number(one.supplier === null) - Number(other.supplier === null));
}

/** Who asks for it, in a few words: the whole way is in the steps. */
export function whoAsks({ by, short }: Suggestion): string {
  const parts = [
    [by.kit, 'for kits'],
    [by.likely, 'for kits not approved'],
    [by.due, 'for units due'],
    [by.finding, 'by findings'],
  ] as const;
  const words = parts.filter(([pieces]) => pieces > 0).map(([pieces, what]) => `${pieces} ${what}`);
  if (words.length > 0) return words.join(', ');
  return short > 0 ? `${short} short` : 'Under its stock level';
}

export function wantedOf({ part, quantity, packSize, leadDays, unitPrice }: Suggestion): Wanted {
  return { part, quantity, packSize, leadTimeDays: leadDays, unitPrice };
}

/** The page behind the number of a step. */
export function placeOf({ from, id }: WhyStep): string {
  if (from === 'kit') return `/kits/${id}`;
  if (from === 'expected') return `/parts/${id}/expected`;
  if (from === 'costs') return '/suppliers';
  if (from === 'record' || from === 'offer') return id ? `/suppliers/${id}` : '/suppliers';
  return `/parts/${id}`;
}
