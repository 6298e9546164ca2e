import { governorOperations } from '@hubwright/contracts/governor-tests/operations';
import { useNavigate } from '@tanstack/react-router';
import { useState } from 'react';
import { useMay } from '../../api/me.ts';
import { Button } from '../../ui/Button.tsx';
import { EmptyState } from '../../ui/EmptyState.tsx';
import { Link } from '../../ui/Link.tsx';
import { StateMark } from '../../ui/StateMark.tsx';
import { BeginRun } from './begin-run.tsx';
import { type Program, runMarks, type Waiting } from './governor.ts';

/** Why no run can begin, in the order somebody can do something about it. */
function hindrance({ blocked, application, programId }: Waiting): string | null {
  if (blocked) return blocked.detail;
  if (application === null)
    return 'Nobody knows which aircraft it is for: no governor is tested without the application.';
  return programId === null ? `There is no program for ${application} by the revision in use.` : null;
}

/** Governors whose test is next, each with its application and what comes next. */
export function WaitingList({ rows, programs }: { rows: readonly Waiting[]; programs: readonly Program[] }) {
  const navigate = useNavigate();
  const mayBegin = useMay(governorOperations.beginGovernorRun);
  const [beginning, setBeginning] = useState<Waiting>();
  const program = programs.find(({ id }) => id === beginning?.programId);
  if (rows.length === 0)
    return (
      <EmptyState title="No governor waits for the bench">
        One appears here when the test is the next step of its traveler.
      </EmptyState>
    );
  return (
    <>
      <ul className="lines">
        {rows.map((row) => {
          const why = hindrance(row);
          const isOpen = row.run?.state === 'open';
          return (
            <li key={row.stepId}>
              <span>
                <Link href={`/travelers/${row.travelerId}?step=${row.stepId}`}>{row.workOrderNumber}</Link>{' '}
                {row.designation}, serial {row.serial}
                <br />
                <span className="soft small">{row.application ?? 'application unknown'}</span>
                {why ? <span className="small"> {why}</span> : null}
              </span>
              <span className="row">
                {row.run ? (
                  <>
                    <StateMark {...runMarks[row.run.state]} />
                    <Link href={`/governor-runs/${row.run.id}`}>{row.run.number}</Link>
                  </>
                ) : null}
                {why ? <StateMark state="waiting" word="cannot begin" /> : null}
                {mayBegin && !why && !isOpen ? (
                  <Button weight={row.run?.state === 'passed' ? 'plain' : 'next'} onPress={() => setBeginning(row)}>
                    {row.run ? 'Begin another run' : 'Begin the run'}
                  </Button>
                ) : null}
              </span>
            </li>
          );
        })}
      </ul>
      {beginning && program ? (
        <BeginRun
          waiting={beginning}
          program={program}
          onBegun={(runId) => void navigate({ to: `/governor-runs/${runId}` })}
          onClose={() => setBeginning(undefined)}
        />
      ) : null}
    </>
  );
}
