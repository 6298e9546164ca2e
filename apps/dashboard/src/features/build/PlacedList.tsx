import type { ReactNode } from 'react';
import { StateMark } from '../../ui/StateMark.tsx';
import type { Placed } from './build-sheet.ts';

/** Tray or rack: a short list that must run empty. */
export function PlacedList(props: {
  title: string;
  lots: readonly Placed[];
  emptyWords: string;
  isRack?: boolean;
  actions?: (lot: Placed) => ReactNode;
}) {
  return (
    <section className="sheet stack">
      <p className="row between">
        <strong>{props.title}</strong>
        <span className="figure">{props.lots.reduce((sum, lot) => sum + lot.quantity, 0)}</span>
      </p>
      {props.lots.length === 0 ? (
        <p>
          <StateMark state="passed" word={props.emptyWords} />
        </p>
      ) : (
        <ul className="lines">
          {props.lots.map((lot) => (
            <li key={`${lot.lotId} ${lot.position}`} className="row between">
              <span>
                <strong>{lot.quantity}</strong> <span className="code">{lot.part.number}</span> {lot.part.description}{' '}
                <span className="soft small">
                  {lot.position}, {lot.lotCode}
                </span>
              </span>
              <span className="row">
                {props.isRack ? (
                  <StateMark
                    state={lot.state === 'accepted' ? 'passed' : 'waiting'}
                    word={lot.state === 'accepted' ? 'passed for reuse' : 'not inspected'}
                  />
                ) : null}
                {props.actions?.(lot)}
              </span>
            </li>
          ))}
        </ul>
      )}
    </section>
  );
}
