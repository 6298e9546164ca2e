/** What a step waits for: a declared event of a list, blades shortened on this visit. */
interface Conditions {
  readonly events: readonly string[];
  readonly whenShortened?: boolean;
}

/**
 * Whether a route's step belongs to a unit: always where it names no condition, else when one of its events was declared and, where it
 * belongs to shortening, the blades are shortened.
 *
 * @example takesStep({ events: ['strike', 'lightning'] }, { events: ['strike'] }) // true
 */
export function takesStep(
  step: Conditions,
  unit: { readonly events: readonly string[]; readonly isShortened?: boolean },
) {
  const isDeclared = step.events.length === 0 || step.events.some((event) => unit.events.includes(event));
  return isDeclared && (!step.whenShortened || unit.isShortened === true);
}
