import { judgeBake } from '@hubwright/rules/bake';
import { RuleError } from '@hubwright/rules/errors';
import { durationWords } from '../../format/step-words.ts';
import { InstantText } from '../../format/values.tsx';
import { StateMark } from '../../ui/StateMark.tsx';
import { TextField } from '../../ui/TextField.tsx';
import { type BakeDraft, bakeInput } from './bake-entry.ts';
import type { Step } from './traveler.ts';

type Baking = Step & { readonly bake: NonNullable<Step['bake']> };

/** What the chart says so far: good, or why not. `platedAt` follows from the last instant at which the bake may begin. */
export function bakeReasons({ bake, startBy }: Baking, draft: BakeDraft): string[] | undefined {
  const entry = bakeInput(draft);
  if (!entry || !startBy) return undefined;
  try {
    return judgeBake({
      platedAt: Date.parse(startBy) - bake.startWithinMinutes * 60_000,
      startedAt: Date.parse(entry.startedAt),
      chart: entry.chart.map(({ at, temperature }) => ({ at: Date.parse(at), temperature: Number(temperature) })),
      spec: { ...bake, low: Number(bake.low), high: Number(bake.high) },
    }).reasons;
  } catch (error) {
    if (error instanceof RuleError) return [error.message];
    throw error;
  }
}

/** When the bake began and what the oven charted, judged while it is typed. */
export function BakeFields(props: { step: Baking; draft: BakeDraft; onChange: (draft: BakeDraft) => void }) {
  const { step, draft } = props;
  const { low, high, unit, minimumMinutes } = step.bake;
  const reasons = bakeReasons(step, draft);
  return (
    <div className="stack">
      <p>
        {durationWords(minimumMinutes)} within {low} to {high} {unit}.{' '}
        {step.startBy ? (
          <strong>
            To begin by <InstantText instant={step.startBy} />
          </strong>
        ) : (
          <StateMark state="hold" word="nothing is signed as plated yet" />
        )}
      </p>
      <TextField
        name="bake/startedAt"
        label="The bake began"
        type={'datetime-local' as 'text'}
        value={draft.startedAt}
        onChange={(startedAt) => props.onChange({ ...draft, startedAt })}
        isRequired
      />
      <TextField
        name="bake/chart"
        label="The oven’s chart"
        hint="A line each: date, time, temperature, such as 2026-03-01 12:20 350"
        lines={6}
        value={draft.chart}
        onChange={(chart) => props.onChange({ ...draft, chart })}
        isRequired
      />
      {reasons ? (
        <p aria-live="polite">
          <StateMark
            state={reasons.length === 0 ? 'passed' : 'stop'}
            word={reasons.length === 0 ? 'begun in time and held long enough' : reasons.join(' ')}
          />
        </p>
      ) : null}
    </div>
  );
}
