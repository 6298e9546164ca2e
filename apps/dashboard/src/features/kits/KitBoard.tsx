import type { KeyboardEvent, ReactNode } from 'react';
import { dueWords, formatDate } from '../../format/dates.ts';
import { StateMark } from '../../ui/StateMark.tsx';
import { BoardAxis, BoardKey } from './BoardAxis.tsx';
import styles from './board.module.css';
import { type BoardScale, boardScale } from './board-scale.ts';
import { KitLane } from './KitLane.tsx';
import type { KitRow } from './kit-board.ts';
import { kitMark } from './kit-words.ts';

export interface KitBoardProps {
  kits: readonly KitRow[];
  today: string;
  /** The kit under the cursor, whose short lines are in sight. */
  opened: string | undefined;
  onOpen: (kitCode: string) => void;
  /** What stands below the opened row. */
  below: (kit: KitRow) => ReactNode;
}

/** Arrow keys walk the kits, Home and End jump. */
function walk(event: KeyboardEvent<HTMLButtonElement>) {
  const rows = [...(event.currentTarget.closest('ol')?.querySelectorAll<HTMLElement>('[data-kit]') ?? [])];
  const at = rows.indexOf(event.currentTarget);
  const to = { ArrowDown: at + 1, ArrowUp: at - 1, Home: 0, End: rows.length - 1 }[event.key];
  if (to === undefined || !rows[to]) return;
  event.preventDefault();
  rows[to].focus();
}

function BoardRow({
  kit,
  scale,
  ...board
}: { kit: KitRow; scale: BoardScale } & Omit<KitBoardProps, 'kits' | 'today'>) {
  const isOpen = kit.id === board.opened;
  const { state, word } = kitMark(kit);
  return (
    <li className={styles.row} {...(isOpen ? { 'data-open': true } : {})}>
      <button
        type="button"
        data-kit={kit.code}
        className={styles.opener}
        aria-expanded={isOpen}
        onClick={() => board.onOpen(kit.code)}
        onFocus={(event) => event.currentTarget.matches(':focus-visible') && board.onOpen(kit.code)}
        onKeyDown={walk}
      >
        <span className={styles.who}>
          <span>
            <span className={`code ${styles.name}`}>{kit.code}</span>{' '}
            <span className="code">{kit.workOrder.number}</span>
          </span>
          <span className="small soft">
            {kit.workOrder.unit} · {kit.workOrder.customer}
          </span>
        </span>
        <KitLane scale={scale} kit={kit} />
        <span className={styles.when}>
          <StateMark state={state} word={word} />
          <span className="small quantity">
            {formatDate(kit.needBy)} <span className="soft">({dueWords(kit.needBy, scale.today)})</span>
          </span>
        </span>
      </button>
      {isOpen ? board.below(kit) : null}
    </li>
  );
}

/** Time from left to right, one row a kit by need date; below the cursor what its kit lacks. */
export function KitBoard({ kits, today, ...board }: KitBoardProps) {
  const named = kits.flatMap((kit) => [kit.needBy, ...(kit.wholeOn === 'never' ? [] : [kit.wholeOn])]);
  const scale = boardScale(today, named);
  return (
    <div>
      <BoardAxis scale={scale} />
      <ol className={styles.board}>
        {kits.map((kit) => (
          <BoardRow key={kit.id} kit={kit} scale={scale} {...board} />
        ))}
      </ol>
      <BoardKey />
    </div>
  );
}
