import { plainDates } from '../../format/plain-dates.ts';
import { Link } from '../../ui/Link.tsx';
import { placeOf, type WhyStep } from './suggestions.ts';

/** One step; its number leads to what it was taken from. */
function Step({ step }: { step: WhyStep }) {
  const at = step.value === '' ? -1 : step.sentence.indexOf(step.value);
  if (at < 0) return <Link href={placeOf(step)}>{plainDates(step.sentence)}</Link>;
  return (
    <>
      {plainDates(step.sentence.slice(0, at))}
      <Link href={placeOf(step)}>{step.value}</Link>
      {plainDates(step.sentence.slice(at + step.value.length))}
    </>
  );
}

/** Why so many: from the need to the number, one step after the other. */
export function WhyList({ steps }: { steps: readonly WhyStep[] }) {
  return (
    <ol className="stack tight">
      {steps.map((step) => (
        <li key={step.sentence}>
          <Step step={step} />
        </li>
      ))}
    </ol>
  );
}
