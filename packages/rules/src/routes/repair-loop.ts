/**
 * Whether a step that failed may be repaired and done again. `attempt` counts from 1; each repair loop ends in the next attempt,
 * so that with `mostRepairs` loops the part is accepted or rejected at the latest in attempt `mostRepairs` + 1.
 *
 * @example mayRepairAgain({ attempt: 3, mostRepairs: 2 }) // false
 */
export function mayRepairAgain({ attempt, mostRepairs }: { readonly attempt: number; readonly mostRepairs: number }) {
  return attempt <= mostRepairs;
}
