import { workOrderOperations } from '@hubwright/contracts/work-orders/operations';
import { useSuspenseQuery } from '@tanstack/react-query';
import { useRef, useState } from 'react';
import { z } from 'zod';
import { useMay } from '../../api/me.ts';
import { queryFor } from '../../api/query.ts';
import { DockStrip } from '../../features/work-orders/DockStrip.tsx';
import {
  type DeskBoard,
  type DeskFilter,
  deskBoardQuery,
  deskFilters,
  theyOwe,
  weOwe,
} from '../../features/work-orders/desk-board.ts';
import { OwedList } from '../../features/work-orders/OwedList.tsx';
import { readyAnswer, unitWords, whereWords } from '../../features/work-orders/order-words.ts';
import { useToday } from '../../format/use-today.ts';
import { useAddress } from '../../shell/use-address.ts';
import { ViewHead } from '../../shell/ViewHead.tsx';
import { LinkButton } from '../../ui/Button.tsx';
import { EmptyState } from '../../ui/EmptyState.tsx';
import { SearchBox } from '../../ui/SearchBox.tsx';
import styles from './front-desk.module.css';
import { OpenedUnit } from './OpenedUnit.tsx';

const address = z.object({ show: z.enum(deskFilters).catch('ours'), unit: z.string().catch('') });

const filterWords: Record<DeskFilter, string> = { ours: 'we owe an answer', theirs: 'owe us one' };

/** Somebody calls: the answer stands in the list of hits already, before one is even opened. */
function WhoCalls({ onOpen }: { onOpen: (workOrderId: string) => void }) {
  const today = useToday();
  const [times, setTimes] = useState(0);
  return (
    <SearchBox
      key={times}
      label="Who calls about which unit?"
      hint="Customer, serial or work order; the answer stands beside it"
      picked={null}
      isRequired
      onPick={(thing) => {
        if (!thing) return;
        onOpen(thing.id);
        setTimes(times + 1);
      }}
      search={(text) =>
        queryFor(workOrderOperations.listWorkOrders, { stage: 'open', limit: 8, ...(text ? { search: text } : {}) })
      }
      found={({ rows }) =>
        rows.map((row) => ({
          id: row.id,
          name: `${row.number} ${row.customer.name}, ${unitWords(row.unit)}`,
          detail: [readyAnswer(row, today), whereWords(row), ...row.holds.map((hold) => `Held: ${hold.reason}.`)].join(
            ' ',
          ),
        }))
      }
    />
  );
}

/** Which list is in sight, with how long each is. */
function Filters(props: { board: DeskBoard; show: DeskFilter; onShow: (show: DeskFilter) => void }) {
  const counts: Record<DeskFilter, number> = { ours: weOwe(props.board).length, theirs: theyOwe(props.board).length };
  return (
    <fieldset className={styles.filters} aria-label="Whose answer is owed">
      {deskFilters.map((filter) => (
        <button
          key={filter}
          type="button"
          className={styles.filter}
          aria-pressed={props.show === filter}
          onClick={() => props.onShow(filter)}
        >
          <strong>{counts[filter]}</strong> {filterWords[filter]}
        </button>
      ))}
    </fieldset>
  );
}

/** The first of a list as it was when the list came in sight: answering it must not swap the unit under the person's hands. */
function useFirst(show: DeskFilter, id: string | undefined): string | undefined {
  const first = useRef<{ show: DeskFilter; id: string | undefined }>(undefined);
  if (first.current?.show !== show || first.current.id === undefined) first.current = { show, id };
  return first.current.id;
}

export function DeskPage() {
  const board = useSuspenseQuery(deskBoardQuery).data;
  const [{ show, unit }, setAddress] = useAddress(address);
  const owed = show === 'ours' ? weOwe(board) : theyOwe(board);
  const first = useFirst(show, owed[0]?.workOrderId);
  const mayBookIn = useMay(workOrderOperations.receiveUnit);
  const opened = unit || first;
  const open = (workOrderId: string) => setAddress({ unit: workOrderId });
  return (
    <div className="stack">
      <div className={styles.head}>
        <ViewHead title="Front desk" question="Who is waiting for us, and whom do we owe an answer?">
          {mayBookIn ? <LinkButton href="/desk/book-in">Book a unit in</LinkButton> : null}
        </ViewHead>
        <WhoCalls onOpen={open} />
      </div>
      <DockStrip board={board} opened={opened} onOpen={open} />
      <div className={styles.facing}>
        <section className={`sheet stack ${styles.list}`} aria-label="Answers owed">
          <Filters board={board} show={show} onShow={(next) => setAddress({ show: next, unit: '' })} />
          <OwedList filter={show} owed={owed} opened={opened} onOpen={open} />
        </section>
        <section className={`sheet ${styles.opened}`} aria-label="The unit opened">
          {opened ? (
            <OpenedUnit key={opened} workOrderId={opened} />
          ) : (
            <EmptyState title="No unit is opened">Choose one at the left, or type who calls.</EmptyState>
          )}
        </section>
      </div>
    </div>
  );
}
