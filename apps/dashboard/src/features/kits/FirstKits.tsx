import { FirstHint } from '../../ui/FirstHint.tsx';
import { Link } from '../../ui/Link.tsx';
import { asksOf, type KitRow } from './kit-board.ts';

/** The first visit on this device: three things to try, with kits that are really on the board. */
export function FirstKits({ kits }: { kits: readonly KitRow[] }) {
  const whole = kits.find((kit) => asksOf(kit) === 'pull');
  const short = kits.find((kit) => asksOf(kit) === 'order');
  if (!(whole || short)) return null;
  return (
    <FirstHint id="parts-room" title="New here? Three things to try">
      <ol>
        {whole ? (
          <li>
            Everything for <Link href={`/kits/${whole.id}`}>{whole.code}</Link> lies on the shelf: open it, promise the
            parts to it, and scan each lot once into its tray.
          </li>
        ) : null}
        {short ? (
          <li>
            <Link href={`/shortages?kit=${short.code}`}>{short.code}</Link> is short of something: see what, why and by
            when to order, and raise the order from there.
          </li>
        ) : null}
        <li>Scan any label, or type its code above: a kit, a lot or a part opens by itself.</li>
      </ol>
    </FirstHint>
  );
}
