import type { NewStep } from './splice-steps.ts';
import type { SignedStep } from './step-signing.ts';

/** A step with its measures, as it stands on a traveler. */
export type StandingStep = Omit<SignedStep, 'traveler'> & { readonly traveler?: unknown };

/** The title a step had before it came again. */
export function plainTitle(title: string): string {
  return title.replace(/, again after .*$/, '');
}

/** The same step once more, to put behind what is signed: its title says after what. */
export function stepAgain(step: StandingStep, after: string): NewStep {
  const { id: _id, travelerId: _on, sequence: _at, state: _state, signedAt: _signed, findingId: _f, ...more } = step;
  const { waitUntil: _until, traveler: _traveler, title, attempt, ...same } = more;
  return {
    ...same,
    attempt: attempt + 1,
    title: `${plainTitle(title)}, again after ${after}`.slice(0, 200),
  } as unknown as NewStep;
}
