import { useSuspenseQuery } from '@tanstack/react-query';
import { z } from 'zod';
import { ExpectedArrivals } from '../../features/due-dates/ExpectedArrivals.tsx';
import { ExpiringAuthorisations } from '../../features/people/ExpiringAuthorisations.tsx';
import { TrainingDue } from '../../features/people/TrainingDue.tsx';
import { ExpiringInstruments } from '../../features/processes/ExpiringInstruments.tsx';
import { BakeList } from '../../features/travelers/BakeList.tsx';
import { bakesQuery } from '../../features/travelers/bakes.ts';
import { benchBoardQuery } from '../../features/travelers/bench-board.ts';
import { ProcessQueues } from '../../features/travelers/ProcessQueues.tsx';
import {
  ballWords,
  byUrgency,
  handsOf,
  houseSentence,
  keptWords,
  managerBoardQuery,
  promiseOf,
} from '../../features/work-orders/manager-board.ts';
import { TurnaroundSheet } from '../../features/work-orders/TurnaroundSheet.tsx';
import { UnitLanes } from '../../features/work-orders/UnitLanes.tsx';
import { useToday } from '../../format/use-today.ts';
import { useAddress } from '../../shell/use-address.ts';
import { ViewHead } from '../../shell/ViewHead.tsx';
import { EmptyState } from '../../ui/EmptyState.tsx';
import styles from './manager.module.css';

const address = z.object({ hands: z.string().catch(''), promise: z.string().catch(''), scope: z.string().catch('') });
const renewalDays = 60;

export function ManagerPage() {
  const board = useSuspenseQuery(managerBoardQuery).data;
  const benches = useSuspenseQuery(benchBoardQuery).data;
  const bakes = useSuspenseQuery(bakesQuery).data.rows;
  const today = useToday();
  const [{ hands, promise, scope }, setAddress] = useAddress(address);
  const late = board.units.filter((unit) => promiseOf(unit, today) === 'late').length;
  const shown = byUrgency(
    board.units.filter(
      (unit) => (hands === '' || unit.ball === hands) && (promise === '' || promiseOf(unit, today) === promise),
    ),
  );
  const filters = [
    {
      key: 'all',
      count: board.units.length,
      text: 'in the house',
      isOn: hands === '' && promise === '',
      to: { hands: '', promise: '' },
    },
    { key: 'late', count: late, text: 'late', isOn: promise === 'late', to: { hands: '', promise: 'late' } },
    ...handsOf(board.units).map(({ ball, units }) => ({
      key: ball,
      count: units,
      text: `with ${ballWords[ball].toLowerCase()}`,
      isOn: hands === ball,
      to: { hands: ball, promise: '' },
    })),
  ];
  return (
    <>
      <ViewHead title="Manager" question="Are we keeping our promises, and what limits us?" />
      <p className={styles.sentence}>{houseSentence(board.units, today)}</p>
      <p className={styles.kept}>{keptWords(board)}</p>
      <div className="stack">
        <section className="sheet stack" aria-labelledby="units">
          <h2 id="units">Units in the house</h2>
          <fieldset className={styles.filters} aria-label="Which units to show">
            {filters.map((filter) => (
              <button
                key={filter.key}
                type="button"
                className={styles.filter}
                aria-pressed={filter.isOn}
                onClick={() => setAddress(filter.to)}
              >
                <strong>{filter.count}</strong> {filter.text}
              </button>
            ))}
          </fieldset>
          {shown.length === 0 ? (
            <EmptyState title={board.units.length === 0 ? 'Nothing came in yet' : 'No unit fits'}>
              {board.units.length === 0
                ? 'Units stand here from the day they are booked in.'
                : 'Show all in the house.'}
            </EmptyState>
          ) : (
            <UnitLanes units={shown} today={today} />
          )}
          {board.more ? (
            <p className="soft">More units are in the house than fit here; the work order list has them all.</p>
          ) : null}
        </section>
        {bakes.length > 0 ? (
          <div className="sheet">
            <BakeList />
          </div>
        ) : null}
        <section className="sheet stack" aria-labelledby="queues">
          <h2 id="queues">What waits at each process</h2>
          <ProcessQueues board={benches} />
        </section>
        <section className="sheet stack" aria-labelledby="turnaround">
          <h2 id="turnaround">Turnaround of finished units</h2>
          <TurnaroundSheet board={board} scope={scope} onScope={(value) => setAddress({ scope: value })} />
        </section>
        <section className="sheet stack" aria-labelledby="arrivals">
          <h2 id="arrivals">What is likely to come in</h2>
          <ExpectedArrivals asked={{}} title="Expected arrivals by month" />
        </section>
        <div className={styles.pair}>
          <section className="sheet stack" aria-labelledby="gauges">
            <h2 id="gauges">Calibration</h2>
            <ExpiringInstruments today={today} withinDays={renewalDays} />
          </section>
          <section className="sheet stack" aria-labelledby="authorisations">
            <h2 id="authorisations">Authorisations</h2>
            <ExpiringAuthorisations today={today} withinDays={renewalDays} />
            <h3>Training</h3>
            <TrainingDue today={today} withinDays={renewalDays} />
          </section>
        </div>
      </div>
    </>
  );
}
