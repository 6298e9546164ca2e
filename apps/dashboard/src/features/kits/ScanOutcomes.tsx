import { countOf } from '../../format/numbers.ts';
import { Button } from '../../ui/Button.tsx';
import { StateShape } from '../../ui/StateMark.tsx';
import type { Issued, ScanOutcome } from './issue-lot.ts';
import type { KitLine } from './kit-detail.ts';
import styles from './pull.module.css';

function takenWords(issued: Issued, lines: readonly KitLine[]): string {
  const said = issued.lines.map(({ lineId, position, quantity, stillNeeds }) => {
    const part = lines.find((line) => line.id === lineId)?.part.number ?? '';
    const rest = stillNeeds === 0 ? 'the line is whole' : `${stillNeeds} still to pull`;
    return `${quantity} × ${part} for ${position}: ${rest}`;
  });
  return said.join('; ');
}

function Words({ outcome, lines }: { outcome: ScanOutcome; lines: readonly KitLine[] }) {
  switch (outcome.kind) {
    case 'waiting':
      return <p>Asking the shop server…</p>;
    case 'undone':
      return <p>Taken back: the pieces are in their bin again.</p>;
    case 'taken':
      return <p>{takenWords(outcome.issued, lines)}</p>;
    case 'refused':
      return (
        <>
          <p>
            <strong>No, because </strong>
            {outcome.problem.facts.detail || outcome.problem.facts.title}
          </p>
          <p>
            <span className="soft">What to do next: </span>
            {outcome.problem.facts.next}
          </p>
        </>
      );
  }
}

const shapes = { waiting: 'waiting', taken: 'passed', refused: 'stop', undone: 'note' } as const;
const heads = { waiting: 'Scanned', taken: 'In the tray', refused: 'Not taken', undone: 'Undone' } as const;

export interface ScanOutcomesProps {
  outcomes: readonly ScanOutcome[];
  lines: readonly KitLine[];
  onUndo: (outcome: ScanOutcome & { kind: 'taken' }) => void;
}

/** What became of the last scan, large enough to read from the shelf: shape, word, colour and sentence say the same. */
export function ScanOutcomes({ outcomes, lines, onUndo }: ScanOutcomesProps) {
  const [newest, ...earlier] = outcomes;
  if (!newest) return null;
  const refusals = earlier.filter((each) => each.kind === 'refused').length;
  return (
    <div className="stack tight">
      <div className={`${styles.outcome} ${styles[newest.kind]}`} role={newest.kind === 'refused' ? 'alert' : 'status'}>
        <StateShape state={shapes[newest.kind]} />
        <div className="stack tight">
          <p className={styles.outcomeHead}>
            {heads[newest.kind]}: <span className="code">{newest.code}</span>
          </p>
          <Words outcome={newest} lines={lines} />
        </div>
        {newest.kind === 'taken' ? <Button onPress={() => onUndo(newest)}>Undo</Button> : null}
      </div>
      {earlier.length > 0 ? (
        <details>
          <summary className="small soft">
            {countOf(earlier.length, 'earlier scan')}
            {refusals > 0 ? `, ${refusals} not taken` : ''}
          </summary>
          <ul className="lines">
            {earlier.map((each) => (
              <li key={each.id}>
                <div className="small">
                  <p>
                    {heads[each.kind]}: <span className="code">{each.code}</span>
                  </p>
                  <Words outcome={each} lines={lines} />
                </div>
                {each.kind === 'taken' ? (
                  <Button weight="quiet" onPress={() => onUndo(each)}>
                    Undo
                  </Button>
                ) : null}
              </li>
            ))}
          </ul>
        </details>
      ) : null}
    </div>
  );
}
