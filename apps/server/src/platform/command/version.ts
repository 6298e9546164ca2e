import { Problem } from '@hubwright/contracts/problems';

/** Throws `out-of-date` with the current version unless the caller saw it. */
export function sameVersion(current: number, expected: number | undefined): void {
  if (expected !== undefined && expected !== current) {
    throw new Problem('out-of-date', `This is now version ${current}; you saw version ${expected}`, {
      version: current,
    });
  }
}

/** What was found, or `not-found` in words. */
export function found<T>(thing: T | null | undefined, what: string): T {
  if (thing === null || thing === undefined) throw new Problem('not-found', `${what} does not exist`);
  return thing;
}
