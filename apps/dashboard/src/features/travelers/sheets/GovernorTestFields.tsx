import { governorOperations } from '@hubwright/contracts/governor-tests/operations';
import type { Reply } from '@hubwright/contracts/operation';
import { useQuery } from '@tanstack/react-query';
import { queryFor } from '../../../api/query.ts';
import { LinkButton } from '../../../ui/Button.tsx';
import { Link } from '../../../ui/Link.tsx';
import { Select } from '../../../ui/Select.tsx';
import { StateMark } from '../../../ui/StateMark.tsx';
import type { SheetFieldsProps } from './sheet-form.ts';

const marks = {
  open: { state: 'open', word: 'under way' },
  passed: { state: 'passed', word: 'passed' },
  failed: { state: 'stop', word: 'failed' },
  'broken-off': { state: 'note', word: 'broken off' },
} as const;

type Runs = Reply<typeof governorOperations.listGovernorRuns>['rows'];
export type ChosenRun = Pick<Runs[number], 'id' | 'number' | 'state'>;

/** The runs of a step, newest first. */
function useRunsOf(stepId: string): Runs {
  const query = queryFor(governorOperations.listGovernorRuns, { stepId, limit: 50 });
  return useQuery(query).data?.rows ?? [];
}

/** Which run on the bench the step is signed with; the way to the bench where there is none yet. */
export function GovernorTestFields({ about, draft, onChange }: SheetFieldsProps<'governor-test', ChosenRun | null>) {
  const runs = useRunsOf(about.step.id);
  const ended = runs.filter(({ state }) => state === 'passed' || state === 'failed');
  const open = runs.find(({ state }) => state === 'open');
  return (
    <div className="stack">
      <ul className="lines">
        {runs.map(({ id, number, state, pointsGood, points, bench }) => (
          <li key={id}>
            <span>
              <Link href={`/governor-runs/${id}`}>{number}</Link> on {bench.tag}, {pointsGood} of {points} points good
            </span>
            <StateMark {...marks[state]} />
          </li>
        ))}
      </ul>
      {ended.length > 0 ? (
        <Select
          name="sheet/runId"
          label="Signed with the run"
          value={draft?.id ?? null}
          onChange={(runId) => onChange(ended.find(({ id }) => id === runId) ?? null)}
          choices={ended.map(({ id, number, state }) => ({ value: id, text: `${number}, ${state}` }))}
          isRequired
        />
      ) : null}
      <div className="row">
        <LinkButton
          href={open ? `/governor-runs/${open.id}` : '/governor-bench'}
          weight={ended.length > 0 ? 'plain' : 'next'}
        >
          {open ? 'Open the bench run' : 'To the governor bench'}
        </LinkButton>
      </div>
    </div>
  );
}
