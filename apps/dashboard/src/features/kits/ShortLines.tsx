import { useQuery } from '@tanstack/react-query';
import type { ReactNode } from 'react';
import { plainDates } from '../../format/plain-dates.ts';
import { DueText } from '../../format/values.tsx';
import { Link } from '../../ui/Link.tsx';
import { Refusal } from '../../ui/Refusal.tsx';
import { Skeleton } from '../../ui/Skeleton.tsx';
import { StateMark } from '../../ui/StateMark.tsx';
import styles from './board.module.css';
import { type KitLine, kitQuery } from './kit-detail.ts';
import { standingMark } from './kit-words.ts';
import { unpromised } from './pull-list.ts';

const worstFirst = ['short', 'late', 'on-order'] as const;

/** Lines that are not on the shelf yet, worst first, then in the order of the kit list. */
export function waitingLines(lines: readonly KitLine[]): readonly KitLine[] {
  return worstFirst.flatMap((standing) => lines.filter((line) => line.standing === standing));
}

function WaitingLine({ line }: { line: KitLine }) {
  const { state, word } = standingMark(line);
  const due = line.pegs.filter((peg) => peg.kind === 'order');
  // With nothing free on the shelf, a lot it counts on is one in quarantine.
  const judged = unpromised(line) === 0 ? line.pegs.filter((peg) => peg.kind === 'lot') : [];
  return (
    <li className={styles.line}>
      <StateMark state={state} word={line.short > 0 ? `${word} ${line.short}` : word} />
      <div>
        <p>
          <span className="code">{line.part.number}</span> {line.part.description}
          <span className="soft"> · {line.position}</span>
        </p>
        {line.sentence ? <p className="small">{plainDates(line.sentence)}</p> : null}
        {judged.map((peg) => (
          <p key={peg.id} className="small soft">
            {peg.quantity} in <Link href={`/lots/${peg.id}`}>{peg.code}</Link>, which waits to be judged
          </p>
        ))}
        {due.map((peg) => (
          <p key={peg.id} className="small soft">
            {peg.quantity} on <Link href={`/orders/${peg.orderId}`}>{peg.code}</Link>, due <DueText date={peg.date} />
          </p>
        ))}
      </div>
    </li>
  );
}

/** What one kit still waits for, and the one thing to do about it. */
export function ShortLines({ kitId, actions }: { kitId: string; actions: ReactNode }) {
  const kit = useQuery(kitQuery(kitId));
  const waiting = kit.data ? waitingLines(kit.data.lines) : [];
  return (
    <div className={styles.below}>
      {kit.error ? <Refusal problem={kit.error} /> : null}
      {kit.isPending && !kit.error ? <Skeleton lines={2} /> : null}
      {kit.data && waiting.length === 0 ? (
        <p>Everything this kit still needs lies on the shelf or in its tray.</p>
      ) : null}
      <div className="row">{actions}</div>
      <ul className={styles.lines}>
        {waiting.map((line) => (
          <WaitingLine key={line.id} line={line} />
        ))}
      </ul>
    </div>
  );
}
