import { manualOperations } from '@hubwright/contracts/manuals/operations';
import type { InstrumentKind, Scope } from '@hubwright/contracts/manuals/words';
import { scopes, scopeTitles } from '@hubwright/contracts/manuals/words';
import type { Reply } from '@hubwright/contracts/operation';
import { queryFor } from '../../api/query.ts';

export type Manual = Reply<typeof manualOperations.listManuals>['rows'][number];
export type RevisionRow = Manual['revisions'][number];
export type Revision = Reply<typeof manualOperations.showRevision>;
export type RevisionModel = Revision['models'][number];
export type Model = Reply<typeof manualOperations.listModels>['rows'][number];
export type ModelDetail = Reply<typeof manualOperations.showModel>;

export const revisionQuery = (revisionId: string) => queryFor(manualOperations.showRevision, { revisionId });
export const modelQuery = (modelId: string) => queryFor(manualOperations.showModel, { modelId });

export function currentOf(manual: Manual): RevisionRow | undefined {
  return manual.revisions.find((each) => each.state === 'current');
}

/** Scopes as a cell of a table says them: all of them need no list. */
export function scopesInWords(given: readonly Scope[]): string {
  return given.length === scopes.length
    ? 'every scope'
    : given.map((scope) => scopeTitles[scope].toLowerCase()).join(', ');
}

/** `torque-wrench` → `torque wrench`. */
export function kindWords(kind: InstrumentKind): string {
  return kind.replaceAll('-', ' ');
}
