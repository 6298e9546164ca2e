import { kitsOperations } from '@hubwright/contracts/kits/operations';
import { useCommand } from '../../api/command.ts';
import { dateIn } from '../../format/dates.ts';
import { countOf } from '../../format/numbers.ts';
import { useShop } from '../../format/shop-context.tsx';
import { Button } from '../../ui/Button.tsx';
import { Refusal } from '../../ui/Refusal.tsx';
import { StateMark } from '../../ui/StateMark.tsx';
import { say } from '../../ui/toasts.tsx';
import { trayDifferences } from './differences.ts';
import type { Kit } from './kit-detail.ts';
import { TrayDifferences } from './TrayDifferences.tsx';

/** Lines of the list that are not in the kit yet are added by one press. */
function AddListed({ kit }: { kit: Kit }) {
  const { zone } = useShop();
  const complete = useCommand(kitsOperations.explodeKit);
  // The day is asked for, and kept as it is where the kit is there already.
  const today = dateIn(zone, new Date());
  const needBy = [kit.needBy, today].sort().at(-1) ?? today;
  return (
    <>
      <div className="row">
        <Button
          isPending={complete.isPending}
          onPress={() =>
            complete.mutate(
              { input: { workOrderId: kit.workOrder.id, needBy } },
              { onSuccess: ({ lines }) => say(`${countOf(lines, 'line')} added to ${kit.code}.`) },
            )
          }
        >
          Add the listed lines to the kit
        </Button>
      </div>
      {complete.error ? <Refusal problem={complete.error} /> : null}
    </>
  );
}

/**
 * What the kit itself leaves open, by name: lines that are not in it yet, pieces its lines do not ask for any more, and what was
 * asked for after the pulling had begun. What is about the tray stands once, as a row with the button that mends it.
 */
export function KitOpenItems(props: { kit: Kit; mayAdd: boolean; mayMove: boolean }) {
  const { kit } = props;
  const rows = kit.state === 'open' ? trayDifferences(kit) : [];
  const elsewhere = kit.openItems.filter(({ place }) => place !== 'tray');
  if (elsewhere.length === 0 && rows.length === 0) return null;
  return (
    <section className="sheet stack">
      <h2>Open in this kit</h2>
      {rows.length > 0 ? (
        <>
          <p>What is asked for has changed since pulling began.</p>
          <TrayDifferences kit={kit} rows={rows} mayMove={props.mayMove} />
        </>
      ) : null}
      {elsewhere.length > 0 ? (
        <ul className="lines">
          {elsewhere.map(({ what }) => (
            <li key={what}>
              <span>
                <StateMark state="waiting" word="open" /> {what}
              </span>
            </li>
          ))}
        </ul>
      ) : null}
      {props.mayAdd && kit.canComplete ? <AddListed kit={kit} /> : null}
    </section>
  );
}
