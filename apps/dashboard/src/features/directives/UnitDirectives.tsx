import { useQuery } from '@tanstack/react-query';
import { type ReactNode, useState } from 'react';
import { plainDates } from '../../format/plain-dates.ts';
import { DateText, Hours } from '../../format/values.tsx';
import { Button } from '../../ui/Button.tsx';
import { Caution } from '../../ui/Caution.tsx';
import { EmptyState } from '../../ui/EmptyState.tsx';
import { Refusal } from '../../ui/Refusal.tsx';
import type { Signer } from '../../ui/SignCommand.tsx';
import { Skeleton } from '../../ui/Skeleton.tsx';
import { StateMark } from '../../ui/StateMark.tsx';
import { DeferDirective } from './defer-directive.tsx';
import { calledOf, type Standing, standingsQuery, stateLooks } from './directives.ts';
import { RecordCompliance } from './record-compliance.tsx';

/** How every directive that may concern a unit stands; on a work order an inspector records what was done. */
export function UnitDirectives(props: {
  of: { workOrderId: string } | { unitId: string };
  /** Whoever may record something, where that is possible. */
  signer?: Signer | undefined;
}) {
  const { data, error } = useQuery(standingsQuery(props.of) as ReturnType<typeof standingsQuery>);
  const [asked, setAsked] = useState<{ what: 'record' | 'defer'; of: Standing }>();
  if (error) return <Refusal problem={error} />;
  if (!data) return <Skeleton />;
  const workOrderId = 'workOrderId' in props.of ? props.of.workOrderId : undefined;
  const { signer } = props;
  const common = { onClose: () => setAsked(undefined) };
  if (data.standings.length === 0)
    return (
      <EmptyState title="No directive concerns it">
        None on record names this model or a part in it. Directives are put on record under Administration.
      </EmptyState>
    );
  return (
    <div className="stack">
      <First due={data.firstDue} />
      <ul className="lines">
        {data.standings.map((one) => (
          <StandingLine key={`${one.directive.id} ${one.itemId}`} of={one}>
            {signer && workOrderId ? (
              <>
                <Button weight="quiet" onPress={() => setAsked({ what: 'record', of: one })}>
                  Record
                </Button>
                {one.state === 'open' && one.directive.deferDays !== null ? (
                  <Button weight="quiet" onPress={() => setAsked({ what: 'defer', of: one })}>
                    Put off
                  </Button>
                ) : null}
              </>
            ) : null}
          </StandingLine>
        ))}
      </ul>
      <Caution>{data.caution}</Caution>
      {asked && signer && workOrderId && asked.what === 'record' ? (
        <RecordCompliance {...common} of={asked.of} workOrderId={workOrderId} signer={signer} />
      ) : null}
      {asked && signer && workOrderId && asked.what === 'defer' ? (
        <DeferDirective {...common} of={asked.of} workOrderId={workOrderId} signer={signer} />
      ) : null}
    </div>
  );
}

function First({ due }: { due: { date: string | null; hoursTenths: number | null } }) {
  if (due.date === null && due.hoursTenths === null) return null;
  return (
    <p>
      Next due by a directive: {due.date === null ? null : <DateText date={due.date} />}
      {due.date !== null && due.hoursTenths !== null ? ' or at ' : null}
      {due.hoursTenths === null ? null : (
        <>
          <Hours tenths={due.hoursTenths} /> since new
        </>
      )}
    </p>
  );
}

function StandingLine({ of, children }: { of: Standing; children: ReactNode }) {
  const look = stateLooks[of.state];
  return (
    <li>
      <span>
        <strong className="code">{calledOf(of.directive)}</strong> {of.directive.title}, {of.item}{' '}
        {of.directive.binding === 'recommended' ? <span className="soft">recommended</span> : null}
        <br />
        <span className="soft">{plainDates(of.reason)}</span>
        {of.last ? (
          <>
            <br />
            <span className="small soft">
              {of.last.method} ({of.last.by}, <DateText date={of.last.on} />)
            </span>
          </>
        ) : null}
      </span>
      <span className="row">
        <StateMark state={look.state} word={look.word} />
        {children}
      </span>
    </li>
  );
}
