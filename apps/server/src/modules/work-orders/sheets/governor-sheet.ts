import type { SheetSpec } from '@hubwright/contracts/manuals/sheets';

/** Whether a step is the test of a governor on the bench: it is signed with a run. */
export function isGovernorTest({ sheet }: { sheet: unknown }): boolean {
  return (sheet as SheetSpec | null)?.kind === 'governor-test';
}
