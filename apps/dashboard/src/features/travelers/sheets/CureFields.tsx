import { useQuery } from '@tanstack/react-query';
import { durationWords } from '../../../format/step-words.ts';
import { StateMark } from '../../../ui/StateMark.tsx';
import { frozenLotsQuery, type Step, type Traveler } from '../traveler.ts';
import { type ChartDraft, ChartField } from './ChartField.tsx';
import type { SheetFieldsProps } from './sheet-form.ts';

/** Lots named by the steps before this one, back to the last cure, newest signature of each. */
function laidUp({ steps }: Traveler, { sequence }: Step): string[] {
  const before = steps.filter((step) => step.sequence < sequence && step.state === 'signed').reverse();
  const last = before.findIndex(({ sheet }) => sheet?.kind === 'cure');
  const used = last < 0 ? before : before.slice(0, last);
  return [...new Set(used.flatMap(({ signOffs }) => signOffs.findLast((one) => one.result === 'pass')?.lots ?? []))];
}

function LaidUpLots({ lots }: { lots: readonly string[] }) {
  const frozen = useQuery(frozenLotsQuery).data?.rows ?? [];
  if (lots.length === 0)
    return <p className="small soft">No lot of resin, film or adhesive is named by a step before.</p>;
  return (
    <ul className="lines small">
      {lots.map((lot) => {
        const found = frozen.find(({ code }) => lot.endsWith(code));
        const left = found ? found.outTimeHours * 60 - found.outMinutes : undefined;
        return (
          <li key={lot}>
            <span>{lot}</span>
            {left === undefined ? null : (
              <StateMark
                state={left < 0 ? 'stop' : 'passed'}
                word={left < 0 ? 'out-time over by now' : `${durationWords(left)} of out-time left now`}
              />
            )}
          </li>
        );
      })}
    </ul>
  );
}

/** The profile asked for, what was laid up, and the chart of the cure. */
export function CureFields({ about, draft, onChange }: SheetFieldsProps<'cure', ChartDraft>) {
  const { spec } = about;
  const { low, high, unit, minimumMinutes, heatUpMost, coolDownMost, coolTo, overMinutes, vacuum } = spec;
  return (
    <>
      <p>
        Heated by {heatUpMost} {unit}/min at most, {durationWords(minimumMinutes)} within {low} to {high} {unit}, cooled
        by {coolDownMost} {unit}/min at most to {coolTo} {unit} (rates over {overMinutes} min)
        {vacuum ? `, under ${vacuum.least} ${vacuum.unit} of vacuum at least all that time` : ''}.
      </p>
      <LaidUpLots lots={laidUp(about.traveler, about.step)} />
      <ChartField
        label="The chart of the cure"
        title="The chart of the cure against its profile"
        asked={spec}
        draft={draft}
        onChange={onChange}
      />
    </>
  );
}
