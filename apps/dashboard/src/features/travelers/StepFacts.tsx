import { Quantity } from '../../format/values.tsx';
import type { Step } from './traveler.ts';

/** Which authorisation the step needs, its standard time, and the fact of the record it shows. */
export function StepFacts({ step }: { step: Step }) {
  return (
    <p className="soft small">
      {step.process.replaceAll('-', ' ')}, {step.level}; standard <Quantity amount={step.standardMinutes} unit="min" />
      {step.fact ? `; shows “${step.fact}” on the record` : ''}
    </p>
  );
}
