import { partOperations } from '@hubwright/contracts/inventory/part-operations';
import { useQuery } from '@tanstack/react-query';
import type { ReactNode } from 'react';
import { queryFor } from '../../api/query.ts';
import { plainDates } from '../../format/plain-dates.ts';
import { DueText } from '../../format/values.tsx';
import { Link } from '../../ui/Link.tsx';
import { StateMark } from '../../ui/StateMark.tsx';
import type { KitLine } from './kit-detail.ts';
import { standingMark } from './kit-words.ts';

/** Which parts may stand in for this one, best first. */
function Alternates({ line }: { line: KitLine }) {
  const answer = useQuery(queryFor(partOperations.listParts, { search: line.part.number, limit: 20 }));
  const part = answer.data?.rows.find((row) => row.id === line.part.id);
  if (!part) return <p className="soft">{answer.isPending ? 'Reading…' : 'Not known'}</p>;
  if (part.alternates.length === 0) return <p>None may stand in for it.</p>;
  return (
    <p>
      {[...part.alternates]
        .sort((one, other) => one.preference - other.preference)
        .map((each, place) => (
          <span key={each.id}>
            {place === 0 ? '' : ', then '}
            <Link href={`/parts/${each.id}`}>{each.number}</Link>
          </span>
        ))}
    </p>
  );
}

function Pegs({ line }: { line: KitLine }) {
  if (line.pegs.length === 0) return <p>Nothing yet.</p>;
  return (
    <ul className="lines">
      {line.pegs.map((peg) => (
        <li key={peg.kind + peg.id}>
          <span>
            {peg.quantity} × {peg.part} from{' '}
            <Link href={peg.kind === 'lot' ? `/lots/${peg.id}` : `/orders/${peg.orderId}`}>{peg.code}</Link>
            {peg.kind === 'order' ? (
              <>
                , due <DueText date={peg.date} />
              </>
            ) : null}
          </span>
        </li>
      ))}
    </ul>
  );
}

/** One line of the kit opened: where its pieces come from, what may stand in, and what can be done about it. */
export function LineSheet({ line, actions }: { line: KitLine; actions?: ReactNode }) {
  const { state, word } = standingMark(line);
  return (
    <section className="stack" aria-labelledby="line-title">
      <div className="row between">
        <h2 id="line-title">
          <Link href={`/parts/${line.part.id}`}>{line.part.number}</Link> {line.part.description}
        </h2>
        <StateMark state={state} word={word} />
      </div>
      {line.sentence ? <p>{plainDates(line.sentence)}</p> : null}
      <dl className="facts">
        <div>
          <dt>For</dt>
          <dd>
            {line.position}, {line.minimum === null ? line.quantity : `${line.minimum} to ${line.quantity} as needed`}
          </dd>
        </div>
        {line.shopPays > 0 ? (
          <div>
            <dt>Paid by the shop</dt>
            <dd>{line.shopPays} put in a second time: a function test failed. Never charged to the customer.</dd>
          </div>
        ) : null}
        <div>
          <dt>Covered by</dt>
          <dd>
            <Pegs line={line} />
          </dd>
        </div>
        <div>
          <dt>May stand in</dt>
          <dd>
            <Alternates line={line} />
          </dd>
        </div>
      </dl>
      {actions}
    </section>
  );
}
