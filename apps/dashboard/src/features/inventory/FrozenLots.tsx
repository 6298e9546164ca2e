import { type FrozenLot, freezerOperations } from '@hubwright/contracts/inventory/freezer-operations';
import { useSuspenseQuery } from '@tanstack/react-query';
import { useCommand } from '../../api/command.ts';
import { useMay } from '../../api/me.ts';
import { queryFor } from '../../api/query.ts';
import { durationWords } from '../../format/step-words.ts';
import { DateText, InstantText, useMinutesUntil } from '../../format/values.tsx';
import { Button } from '../../ui/Button.tsx';
import { EmptyState } from '../../ui/EmptyState.tsx';
import { Refusal } from '../../ui/Refusal.tsx';
import { type State, StateMark } from '../../ui/StateMark.tsx';

export const frozenLotsQuery = queryFor(freezerOperations.listFrozenLots, {});

/** From how much left on it is loud: common practice, no source. */
const soonMinutes = 12 * 60;

function OutMark({ runsOutAt }: { runsOutAt: string }) {
  const left = useMinutesUntil(runsOutAt);
  const state: State = left < 0 ? 'stop' : left <= soonMinutes ? 'hold' : 'waiting';
  return <StateMark state={state} word={left < 0 ? 'out-time over' : `out, ${durationWords(left)} left`} />;
}

function StandingOf({ lot }: { lot: FrozenLot }) {
  if (lot.over) return <StateMark state="stop" word={lot.over} />;
  if (lot.runsOutAt) return <OutMark runsOutAt={lot.runsOutAt} />;
  const left = lot.outTimeHours * 60 - lot.outMinutes;
  return (
    <StateMark
      state={left <= soonMinutes ? 'hold' : 'passed'}
      word={`frozen, ${durationWords(left)} of out-time left`}
    />
  );
}

function FrozenLine({ lot }: { lot: FrozenLot }) {
  const mayMove = useMay(freezerOperations.moveFrozenLot);
  const move = useCommand(freezerOperations.moveFrozenLot);
  const to = lot.outSince === null ? 'out' : 'in';
  return (
    <li>
      <span>
        <strong className="code">{lot.code}</strong> {lot.part.number}{' '}
        <span className="soft">
          {lot.part.description}, {lot.onHand} {lot.part.issueUnit}
        </span>
        <br />
        <span className="small">
          Out for {durationWords(lot.outMinutes)} of {lot.outTimeHours} h
          {lot.outSince ? (
            <>
              , since <InstantText instant={lot.outSince} />
            </>
          ) : null}
          {lot.expiresOn ? (
            <>
              ; freezer life over on <DateText date={lot.expiresOn} />
            </>
          ) : null}
        </span>
        {move.error ? <Refusal problem={move.error} /> : null}
      </span>
      <span className="row">
        <StandingOf lot={lot} />
        {mayMove ? (
          <Button
            isPending={move.isPending}
            onPress={() => move.mutate({ input: { lotId: lot.id, to }, version: lot.version })}
            aria-label={`${to === 'out' ? 'Take out' : 'Put back'} ${lot.code}`}
          >
            {to === 'out' ? 'Taken out' : 'Put back'}
          </Button>
        ) : null}
      </span>
    </li>
  );
}

/** Resin and film: what is out of the freezer, and how long each may still be. */
export function FrozenLots() {
  const lots = useSuspenseQuery(frozenLotsQuery).data.rows;
  if (lots.length === 0)
    return (
      <EmptyState title="No material is kept frozen">
        A part number with an out-time puts its lots here once they are accepted.
      </EmptyState>
    );
  return (
    <ul className="lines">
      {lots.map((lot) => (
        <FrozenLine key={lot.id} lot={lot} />
      ))}
    </ul>
  );
}

/** One line for what lies out of the freezer now; nothing where all is frozen. */
export function OutNow() {
  const out = useSuspenseQuery(frozenLotsQuery).data.rows.filter(({ outSince }) => outSince !== null);
  if (out.length === 0) return null;
  return (
    <section className="sheet stack tight" aria-labelledby="out-now">
      <h2 id="out-now">Out of the freezer</h2>
      <ul className="lines small">
        {out.map((lot) => (
          <li key={lot.id}>
            <span>
              <span className="code">{lot.code}</span> {lot.part.number}
            </span>
            <StandingOf lot={lot} />
          </li>
        ))}
      </ul>
    </section>
  );
}
