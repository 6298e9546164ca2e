import type { Reply } from '@hubwright/contracts/operation';
import type { travelerOperations } from '@hubwright/contracts/work-orders/traveler-operations';
import { countOf } from '../../format/numbers.ts';
import styles from './differences.module.css';

type Difference = Reply<typeof travelerOperations.revisionDifferences>['differences'][number];

const areas: readonly (readonly [Difference['area'], string])[] = [
  ['scope', 'Scope and agreement'],
  ['life', 'Life limits'],
  ['limit', 'Limits'],
  ['step', 'Steps'],
  ['kit', 'Kit list'],
];

/** As many of one kind as are read at a glance; more lie folded under their number. */
const atAGlance = 8;

function Row({ of }: { of: Difference }) {
  return (
    <tr>
      <th scope="row">
        {of.what}
        {of.area === 'life' || of.area === 'scope' ? null : <span className={styles.where}>{of.where}</span>}
      </th>
      <td className="soft">{of.before ?? 'not there'}</td>
      <td className={of.after === null ? 'soft' : ''}>
        {of.after ?? 'not there any more'}
        {of.consequences.map((consequence) => (
          <span key={consequence} className={styles.follows}>
            {consequence}
          </span>
        ))}
      </td>
    </tr>
  );
}

/** What a revision or a scope changes, kind by kind: what stood there, what stands there now, and what follows for work begun. */
export function DifferenceList({
  differences,
  from,
  to,
}: {
  differences: readonly Difference[];
  from: string;
  to: string;
}) {
  if (differences.length === 0) return <p>Nothing that touches this work differs between the two.</p>;
  return (
    <div>
      {areas.map(([area, title]) => {
        const rows = differences.filter((each) => each.area === area);
        return rows.length === 0 ? null : (
          <details key={area} className={styles.area} open={rows.length <= atAGlance}>
            <summary>
              <strong>{title}</strong> <span className="soft">{countOf(rows.length, 'difference')}</span>
            </summary>
            <table className={styles.table}>
              <caption className="only-heard">{title}</caption>
              <thead>
                <tr>
                  <th scope="col">What</th>
                  <th scope="col">{from}</th>
                  <th scope="col">{to}</th>
                </tr>
              </thead>
              <tbody>
                {rows.map((each) => (
                  <Row key={`${each.where} ${each.what} ${each.change}`} of={each} />
                ))}
              </tbody>
            </table>
          </details>
        );
      })}
    </div>
  );
}
