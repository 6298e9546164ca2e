import { quantityText } from '@hubwright/contracts/inventory/quantity';
import type { ReactNode } from 'react';
import { countOf } from '../../format/numbers.ts';
import { Link } from '../../ui/Link.tsx';
import { StateMark } from '../../ui/StateMark.tsx';
import styles from './build.module.css';
import type { Placed } from './build-sheet.ts';

/** One lot for several positions of a tray is one thing in the hand. */
function byLot(lots: readonly Placed[]): { lot: Placed; positions: string[] }[] {
  const found = new Map<string, { lot: Placed; positions: string[] }>();
  for (const lot of lots) {
    const same = found.get(lot.lotId);
    if (!same) found.set(lot.lotId, { lot, positions: [lot.position] });
    else {
      same.lot = { ...same.lot, quantity: same.lot.quantity + lot.quantity };
      same.positions.push(lot.position);
    }
  }
  return [...found.values()];
}

/** Tray or rack: a short list that must run empty. */
export function PlacedList(props: {
  title: string;
  lots: readonly Placed[];
  emptyWords: string;
  /** How a lot of this list stands, where that differs from lot to lot. */
  mark?: (lot: Placed) => ReactNode;
  actions: (lot: Placed) => ReactNode;
  children?: ReactNode;
}) {
  const rows = byLot(props.lots);
  return (
    <section className="sheet stack" aria-label={props.title}>
      <div className="row between">
        <h2>
          {props.title} <span className="soft small">{countOf(rows.length, 'lot')}</span>
        </h2>
        {props.children}
      </div>
      {rows.length === 0 ? (
        <p>
          <StateMark state="passed" word={props.emptyWords} />
        </p>
      ) : (
        // biome-ignore lint/a11y/noNoninteractiveTabindex: a list that scrolls must be reached by keys
        <ul className={`lines ${styles.placed}`} tabIndex={0} aria-label={`${props.title}, lot by lot`}>
          {rows.map(({ lot, positions }) => (
            <li key={lot.lotId}>
              <div>
                <p>
                  <strong>{quantityText(lot.quantity, lot.part.issueUnit)}</strong>{' '}
                  <span className="code">{lot.part.number}</span> {lot.part.description}
                </p>
                <p className="soft small">
                  <Link href={`/lots/${lot.lotId}`}>{lot.lotCode}</Link>, for {positions.join(', ')}
                </p>
              </div>
              {props.mark?.(lot)}
              {props.actions(lot)}
            </li>
          ))}
        </ul>
      )}
    </section>
  );
}
