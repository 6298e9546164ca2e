import { useState } from 'react';
import { Button } from '../../ui/Button.tsx';
import { Link } from '../../ui/Link.tsx';
import styles from './board.module.css';
import { asksOf, type KitRow } from './kit-board.ts';

const stored = 'hubwright.parts-room-hint';

function wasRead(): boolean {
  try {
    return localStorage.getItem(stored) === 'read';
  } catch {
    return false;
  }
}

function markRead() {
  try {
    localStorage.setItem(stored, 'read');
  } catch {
    // Storage may be forbidden; the hint then comes back with the next visit.
  }
}

/** The first visit on this device: three things to try, with kits that are really on the board. */
export function FirstHint({ kits }: { kits: readonly KitRow[] }) {
  const [isRead, setRead] = useState(wasRead);
  const whole = kits.find((kit) => asksOf(kit) === 'pull');
  const short = kits.find((kit) => asksOf(kit) === 'order');
  if (isRead || !(whole || short)) return null;
  return (
    <aside className={styles.hint} aria-label="First steps">
      <div className="stack tight">
        <strong>New here? Three things to try</strong>
        <ol>
          {whole ? (
            <li>
              Everything for <Link href={`/kits/${whole.id}`}>{whole.code}</Link> lies on the shelf: open it, promise
              the parts to it, and scan each lot once into its tray.
            </li>
          ) : null}
          {short ? (
            <li>
              <Link href={`/shortages?kit=${short.code}`}>{short.code}</Link> is short of something: see what, why and
              by when to order, and raise the order from there.
            </li>
          ) : null}
          <li>Scan any label, or type its code above: a kit, a lot or a part opens by itself.</li>
        </ol>
      </div>
      <Button
        onPress={() => {
          markRead();
          setRead(true);
        }}
      >
        Understood
      </Button>
    </aside>
  );
}
