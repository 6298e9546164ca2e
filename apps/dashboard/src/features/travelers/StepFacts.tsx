import { stepNotes } from '../../format/step-words.ts';
import { Quantity } from '../../format/values.tsx';
import type { Step } from './traveler.ts';

/** Which authorisation the step needs, its standard time, and the fact of the record it shows. */
export function StepFacts({ step }: { step: Step }) {
  return (
    <p className="soft small">
      {step.process.replaceAll('-', ' ')}, {step.level}; standard <Quantity amount={step.standardMinutes} unit="min" />
      {step.fact ? `; shows “${step.fact}” on the record` : ''}
      {step.attempt > 1 ? `; attempt ${step.attempt} of at most ${step.mostRepairs + 1}` : ''}
      {stepNotes(step)
        .map((note) => `; ${note}`)
        .join('')}
    </p>
  );
}
