import type { Reply, Sent } from '@hubwright/contracts/operation';
import { reopenOperations } from '@hubwright/contracts/work-orders/reopen-operations';
import { useQuery } from '@tanstack/react-query';
import { type ReactNode, useState } from 'react';
import { queryFor } from '../../api/query.ts';
import { countOf } from '../../format/numbers.ts';
import { Amount } from '../../format/values.tsx';
import { Caution } from '../../ui/Caution.tsx';
import { CheckboxList } from '../../ui/Checkbox.tsx';
import { FormThenSign } from '../../ui/FormThenSign.tsx';
import type { Signer } from '../../ui/SignCommand.tsx';
import { TextField } from '../../ui/TextField.tsx';
import { say } from '../../ui/toasts.tsx';
import type { Step, Traveler } from './traveler.ts';

type Choice = Reply<typeof reopenOperations.reopening>;
interface Props {
  step: Step;
  input: Omit<Sent<typeof reopenOperations.reopenBuild>, 'signature' | 'reason' | 'repeat' | 'seals'>;
  signer: Signer;
  onClose: () => void;
  /** What the signature covers of the test itself. */
  children: ReactNode;
}

/** Tests of a built unit, whose failure opens its build: its angles, a function test, its balance, or what is measured of it as a whole. */
export function isBuildTest({ partClass }: Traveler, { phase, kind, sheet }: Step): boolean {
  const isOwn = partClass === 'assembly' && (phase === 'build' || phase === 'final');
  return isOwn && (kind === 'measure' || ['angles', 'function-test', 'static-balance'].includes(sheet?.kind ?? ''));
}

/** A test failed: what of the build is done again and which seals come anew, then the signature of the failed test. */
export function ReopenBuild(props: Props) {
  const choice = useQuery(queryFor(reopenOperations.reopening, { stepId: props.step.id })).data;
  if (!choice) return null;
  return <Reopening {...props} choice={choice} />;
}

function Reopening({ choice, ...props }: Props & { choice: Choice }) {
  const offered = <T extends { offered: boolean }>(all: readonly T[], id: (one: T) => string) =>
    all.filter((one) => one.offered).map(id);
  const [plan, setPlan] = useState<Plan>({
    reason: '',
    repeat: offered(choice.steps, ({ stepId }) => stepId),
    seals: offered(choice.seals, ({ lineId }) => lineId),
  });
  return (
    <FormThenSign
      title="The test failed: reopen the build"
      width="wide"
      onClose={props.onClose}
      signing={{
        op: reopenOperations.reopenBuild,
        input: { ...props.input, ...plan },
        signer: props.signer,
        process: props.step.process,
        onSigned: ({ steps, seals }) => {
          say(`The build is open again: ${countOf(steps.length, 'step')} to do, ${countOf(seals, 'seal')} to replace.`);
          props.onClose();
        },
        summary: (
          <>
            {props.children}
            <p className="small">
              Failed: {plan.reason}. Done again: {againWords(choice, plan, props.step)}. Seals replaced:{' '}
              {plan.seals.length}.
            </p>
          </>
        ),
      }}
    >
      <PlanFields choice={choice} plan={plan} onChange={setPlan} />
    </FormThenSign>
  );
}

interface Plan {
  readonly reason: string;
  readonly repeat: string[];
  readonly seals: string[];
}

function againWords({ steps, follow }: Choice, { repeat }: Plan, step: Step): string {
  const named = steps.filter(({ stepId }) => repeat.includes(stepId)).map(({ title }) => title);
  return [...named, step.title, ...follow].join(', ');
}

function PlanFields({ choice, plan, onChange }: { choice: Choice; plan: Plan; onChange: (plan: Plan) => void }) {
  const { steps, seals, follow } = choice;
  const chosen = seals.filter(({ lineId }) => plan.seals.includes(lineId));
  const minor = chosen.reduce((sum, { cost }) => sum + cost.minor, 0);
  return (
    <>
      <Caution>
        Release air, nitrogen and spring before anything is loosened, and use no seal again that came out of an opened
        joint, as the current approved manual says.
      </Caution>
      <TextField
        name="reason"
        label="What failed, and where"
        value={plan.reason}
        onChange={(reason) => onChange({ ...plan, reason })}
        isRequired
      />
      <CheckboxList
        name="repeat"
        label="Done again before this test"
        hint={`This test comes again in any case${follow.length > 0 ? `, and so does ${follow.join(', ')}` : ''}.`}
        value={plan.repeat}
        onChange={(repeat) => onChange({ ...plan, repeat })}
        choices={steps.map(({ stepId, title }) => ({ value: stepId, text: title }))}
      />
      {seals.length > 0 ? (
        <CheckboxList
          name="seals"
          label="Seals to replace"
          hint="They leave the unit for the scrap; the parts room is asked for new ones."
          value={plan.seals}
          onChange={(lines) => onChange({ ...plan, seals: lines })}
          choices={seals.map(({ lineId, position, part, quantity }) => ({
            value: lineId,
            text: `${position}: ${quantity} × ${part.number}`,
          }))}
        />
      ) : (
        <p className="soft">No seal of the kit is in the unit.</p>
      )}
      <p aria-live="polite">
        At the shop’s cost, never the customer’s:{' '}
        <strong>
          <Amount minor={minor} />
        </strong>
      </p>
    </>
  );
}
