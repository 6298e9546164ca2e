/**
 * Whether a unit takes a step of its route. A step without events is for every unit; one with events only where one of them was
 * declared, as when a strike asks for more non-destructive tests.
 *
 * @example takesStep({ events: ['strike', 'lightning'] }, { events: ['strike'] }) // true
 */
export function takesStep(step: { readonly events: readonly string[] }, unit: { readonly events: readonly string[] }) {
  return step.events.length === 0 || step.events.some((event) => unit.events.includes(event));
}
