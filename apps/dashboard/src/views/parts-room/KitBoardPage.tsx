import { addDays } from '@hubwright/rules/dates';
import { z } from 'zod';
import { FirstKits } from '../../features/kits/FirstKits.tsx';
import { KitBoard } from '../../features/kits/KitBoard.tsx';
import {
  asksOf,
  type BoardFilter,
  boardColumns,
  boardFilters,
  type KitRow,
  kitsShown,
  useBoard,
} from '../../features/kits/kit-board.ts';
import { ShortLines } from '../../features/kits/ShortLines.tsx';
import { countOf } from '../../format/numbers.ts';
import { useToday } from '../../format/use-today.ts';
import { useAddress } from '../../shell/use-address.ts';
import { ViewHead } from '../../shell/ViewHead.tsx';
import { LinkButton } from '../../ui/Button.tsx';
import { EmptyState } from '../../ui/EmptyState.tsx';
import { ExportButton } from '../../ui/ExportButton.tsx';
import { useNavigateTo } from '../../ui/Link.tsx';
import { PagesFrame } from '../../ui/Pages.tsx';
import { ScanField } from '../../ui/ScanField.tsx';
import styles from './parts-room.module.css';

const address = z.object({ show: z.enum(boardFilters).catch('all'), kit: z.string().catch('') });

const answers: Record<BoardFilter, string> = {
  now: 'I can pull now',
  stopped: 'stopped this week',
  all: 'open in all',
};

/** The one button that helps this kit, and the way to the kit itself. */
function KitActions({ kit }: { kit: KitRow }) {
  const open = `/kits/${kit.id}`;
  const next = {
    order: { href: `/shortages?kit=${kit.code}`, text: 'Order what is short' },
    pull: { href: open, text: 'Pull this kit' },
    chase: { href: '/orders?late=true', text: 'See what is late' },
    wait: undefined,
    done: undefined,
  }[asksOf(kit)];
  return (
    <>
      {next ? (
        <LinkButton href={next.href} weight="next">
          {next.text}
        </LinkButton>
      ) : null}
      {next?.href === open ? null : <LinkButton href={open}>Open the kit</LinkButton>}
    </>
  );
}

/** A scanned or typed code: a kit or work order of the board opens its kit; anything else is looked for everywhere. */
function useBoardScan(kits: readonly KitRow[]) {
  const navigate = useNavigateTo();
  return (code: string) => {
    const typed = code.trim().toUpperCase();
    const kit = kits.find((each) => each.code === typed || each.workOrder.number === typed);
    navigate(kit ? `/kits/${kit.id}` : `/find?code=${encodeURIComponent(typed)}`);
    return true;
  };
}

export function KitBoardPage() {
  const board = useBoard();
  const kits = board.rows;
  const [{ show, kit }, setAddress] = useAddress(address);
  const today = useToday();
  const inAWeek = addDays(today, 7);
  const shown = kitsShown(kits, show, inAWeek);
  const opened = shown.find((each) => each.code === kit) ?? shown[0];
  const scan = useBoardScan(kits);
  return (
    <>
      <div className={styles.head}>
        <div>
          <ViewHead title="Kits" question="What can I pull now, and what stops a builder this week?" />
          <fieldset className={styles.answers} aria-label="Which kits to show">
            {(['now', 'stopped', 'all'] as const).map((filter) => (
              <button
                key={filter}
                type="button"
                className={styles.answer}
                aria-pressed={show === filter}
                onClick={() => setAddress({ show: filter, kit: '' })}
              >
                <strong>{kitsShown(kits, filter, inAWeek).length}</strong> {answers[filter]}
              </button>
            ))}
          </fieldset>
        </div>
        <div className="stack">
          <ScanField label="Scan a kit, a work order or a lot" onScan={scan} />
          <LinkButton href="/kits-to-fill">Kits I can fill now, best first</LinkButton>
        </div>
      </div>
      <div className="stack">
        <PagesFrame of={board}>
          <FirstKits kits={kits} />
          <div className={`sheet ${styles.board}`}>
            <div className="row between">
              <span className="soft small">
                {board.more ? 'the first ' : ''}
                {countOf(shown.length, 'kit')}
              </span>
              <ExportButton caption="Kits" columns={boardColumns} rows={shown} />
            </div>
            {shown.length === 0 ? (
              <EmptyState title={kits.length === 0 ? 'No kit is open' : 'No kit fits'}>
                {kits.length === 0 ? 'A kit is made on the page of its work order.' : 'Show all kits that are open.'}
              </EmptyState>
            ) : (
              <KitBoard
                kits={shown}
                today={today}
                opened={opened?.id}
                onOpen={(code) => setAddress({ kit: code })}
                below={(row) => <ShortLines kitId={row.id} actions={<KitActions kit={row} />} />}
              />
            )}
          </div>
        </PagesFrame>
      </div>
    </>
  );
}
