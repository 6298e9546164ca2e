import type { Reply } from '@hubwright/contracts/operation';
import type { releaseOperations } from '@hubwright/contracts/releases/operations';
import type { Role } from '@hubwright/contracts/roles';

export type OpenItem = Reply<typeof releaseOperations.releaseChecklist>['open'][number];

/** Who holds which authorisation today: `process level` → names. */
export type Holders = ReadonlyMap<string, readonly string[]>;

/** One thing that is open: what, and the roles or the people by name who can close it. */
export function item(
  kind: OpenItem['kind'],
  what: string,
  by: { role?: Role; roles?: readonly Role[]; people?: readonly string[]; subject?: OpenItem['subject'] },
): OpenItem {
  return {
    kind,
    what,
    closedBy: { roles: [...(by.roles ?? (by.role ? [by.role] : []))], people: [...(by.people ?? [])] },
    subject: by.subject ?? null,
  };
}
