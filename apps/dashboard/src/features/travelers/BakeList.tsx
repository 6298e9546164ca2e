import { useSuspenseQuery } from '@tanstack/react-query';
import { Link } from '../../ui/Link.tsx';
import { StateMark } from '../../ui/StateMark.tsx';
import { BakeMark } from './BakeMark.tsx';
import { BakeActions } from './bake-actions.tsx';
import { type Bake, bakesQuery } from './bakes.ts';

function Row({ bake: row }: { bake: Bake }) {
  const { bake, load, blocked } = row;
  return (
    <li>
      <span className="stack tight">
        <span>
          <Link href={`/travelers/${row.travelerId}?step=${row.stepId}`}>{row.travelerNumber}</Link>{' '}
          <strong>{row.position}</strong> <span className="code">{row.serial}</span>{' '}
          <span className="soft small">
            {row.workOrderNumber}, {row.customer}: {row.title}
          </span>
        </span>
        <BakeMark clock={bake} />
        {blocked ? (
          <span className="small">
            <StateMark state="hold" word={blocked.detail} />
          </span>
        ) : null}
      </span>
      {load ? (
        <Link href="/bench?sheet=loads">{load.number}</Link>
      ) : (
        <BakeActions which={{ stepId: row.stepId }} clock={bake} name={`${row.travelerNumber} ${row.position}`} />
      )}
    </li>
  );
}

/** Every bake after plating that is not signed: those that must begin, the soonest first, then those in the oven. */
export function BakeList() {
  const bakes = useSuspenseQuery(bakesQuery).data.rows;
  const [waiting, inOven] = [bakes.filter(({ bake }) => !bake.begun), bakes.filter(({ bake }) => bake.begun)];
  return (
    <div className="stack">
      <section className="stack tight" aria-labelledby="bakes-to-begin">
        <h2 id="bakes-to-begin">Bakes to begin ({waiting.length})</h2>
        {waiting.length === 0 ? <p className="soft">No plated part waits for its bake.</p> : null}
        <ul className="lines">
          {waiting.map((one) => (
            <Row key={one.stepId} bake={one} />
          ))}
        </ul>
      </section>
      <section className="stack tight" aria-labelledby="bakes-in-oven">
        <h2 id="bakes-in-oven">In the oven, chart to sign ({inOven.length})</h2>
        {inOven.length === 0 ? <p className="soft">Nothing is in the oven.</p> : null}
        <ul className="lines">
          {inOven.map((one) => (
            <Row key={one.stepId} bake={one} />
          ))}
        </ul>
      </section>
    </div>
  );
}
