import { usePrinting } from '../../ui/use-printing.ts';
import { SignOffList } from './SignOffList.tsx';
import { StepFacts } from './StepFacts.tsx';
import type { Traveler } from './traveler.ts';

/** The whole traveler on paper: every step with what was measured and who signed, and room to see what is still open. */
export function TravelerPrint({ traveler }: { traveler: Traveler }) {
  if (!usePrinting()) return null;
  return (
    <div>
      {traveler.steps.map((step) => (
        <section key={step.id}>
          <h3>
            {step.sequence}. {step.title}
          </h3>
          <StepFacts step={step} />
          {step.state === 'open' ? <p>Not signed yet.</p> : null}
          {step.state === 'not-needed' ? <p>Not needed any more.</p> : null}
          <SignOffList step={step} />
        </section>
      ))}
    </div>
  );
}
