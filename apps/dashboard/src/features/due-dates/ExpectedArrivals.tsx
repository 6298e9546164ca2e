import { arrivalOperations } from '@hubwright/contracts/due-dates/arrival-operations';
import { useQuery } from '@tanstack/react-query';
import { useState } from 'react';
import { useMay } from '../../api/me.ts';
import { InstantText } from '../../format/values.tsx';
import { Button } from '../../ui/Button.tsx';
import { EmptyState } from '../../ui/EmptyState.tsx';
import { ArrivalsByMonth, expectedWords } from '../../ui/pictures/ArrivalsByMonth.tsx';
import { monthWords } from '../../ui/pictures/TurnaroundByMonth.tsx';
import { Refusal } from '../../ui/Refusal.tsx';
import { Skeleton } from '../../ui/Skeleton.tsx';
import { type Arrivals, type ArrivalsAsked, arrivalsQuery, arrivalsSentence } from './arrivals.ts';
import { AssumptionDialog } from './assume-arrivals.tsx';

/** How many units are likely to come, month by month, with what the numbers rest on. */
export function ExpectedArrivals({ asked, title }: { asked: ArrivalsAsked; title: string }) {
  const answer = useQuery(arrivalsQuery(asked));
  if (answer.error) return <Refusal problem={answer.error} />;
  if (!answer.data) return <Skeleton lines={4} />;
  const { units, months } = answer.data;
  if (units.required + units.recommended === 0)
    return (
      <EmptyState title="No unit out there has a likely date">
        Dates appear once the shop has released units; readings of their aircraft make them better.
      </EmptyState>
    );
  return (
    <div className="stack">
      <p>{arrivalsSentence(answer.data)}</p>
      <ArrivalsByMonth title={title} months={months} />
      <p className="small soft">
        Filled: required. Hatched: recommended, or not said to be either. The line: eight cases of ten.
      </p>
      <details>
        <summary>The same as a table, and what it rests on</summary>
        <Figures arrivals={answer.data} />
        <Foundations arrivals={answer.data} />
      </details>
      <Assumed arrivals={answer.data} />
    </div>
  );
}

function Figures({ arrivals: { months, later, undated } }: { arrivals: Arrivals }) {
  const isCounted = months.some(({ counted }) => counted !== null);
  return (
    <div className="table-frame">
      <table>
        <caption className="only-heard">Expected arrivals by month</caption>
        <thead>
          <tr>
            <th scope="col">Month</th>
            <th scope="col" className="number">
              Required
            </th>
            <th scope="col" className="number">
              Recommended
            </th>
            {isCounted ? (
              <th scope="col" className="number">
                Counted
              </th>
            ) : null}
          </tr>
        </thead>
        <tbody>
          {months.map(({ month, required, recommended, counted }) => (
            <tr key={month}>
              <td>{monthWords(month)}</td>
              <td className="number">{expectedWords(required)}</td>
              <td className="number">{expectedWords(recommended)}</td>
              {counted ? <td className="number">{expectedWords(counted)}</td> : null}
            </tr>
          ))}
          <tr>
            <td>Later, or not to be dated</td>
            <td className="number">{(later.required + undated.required).toFixed(1)}</td>
            <td className="number">{(later.recommended + undated.recommended).toFixed(1)}</td>
            {isCounted ? <td /> : null}
          </tr>
        </tbody>
      </table>
    </div>
  );
}

function Foundations({ arrivals: { conventions, withoutDate } }: { arrivals: Arrivals }) {
  return (
    <ul className="small">
      {conventions.map((sentence) => (
        <li key={sentence}>{sentence}</li>
      ))}
      <li>Units out there without any likely date, in no month: {withoutDate}.</li>
    </ul>
  );
}

function Assumed({ arrivals: { assumption } }: { arrivals: Arrivals }) {
  const mayAssume = useMay(arrivalOperations.assumeArrivals);
  const [isAssuming, setAssuming] = useState(false);
  const { recommendedPercent, since, by, reason } = assumption;
  return (
    <div className="row between">
      <p className="small">
        {recommendedPercent === null
          ? 'Assumption: none. Recommended intervals are told apart and added to nothing.'
          : `Assumption: ${recommendedPercent} in a hundred of the units with a recommended interval come.`}{' '}
        {since ? (
          <span className="soft">
            {by}, <InstantText instant={since} />: {reason}
          </span>
        ) : null}
      </p>
      {mayAssume ? <Button onPress={() => setAssuming(true)}>Change the assumption</Button> : null}
      {isAssuming ? <AssumptionDialog assumption={assumption} onClose={() => setAssuming(false)} /> : null}
    </div>
  );
}
