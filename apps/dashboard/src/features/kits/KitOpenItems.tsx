import { kitsOperations } from '@hubwright/contracts/kits/operations';
import { useCommand } from '../../api/command.ts';
import { dateIn } from '../../format/dates.ts';
import { countOf } from '../../format/numbers.ts';
import { useShop } from '../../format/shop-context.tsx';
import { Button } from '../../ui/Button.tsx';
import { Refusal } from '../../ui/Refusal.tsx';
import { StateMark } from '../../ui/StateMark.tsx';
import { say } from '../../ui/toasts.tsx';
import type { Kit } from './kit-detail.ts';

/** What the kit itself leaves open, by name: lines that are not in it yet, pieces its lines do not ask for any more. */
export function KitOpenItems({ kit, mayAdd }: { kit: Kit; mayAdd: boolean }) {
  const { zone } = useShop();
  const complete = useCommand(kitsOperations.explodeKit);
  if (kit.openItems.length === 0) return null;
  // The day is asked for, and kept as it is where the kit is there already.
  const today = dateIn(zone, new Date());
  const needBy = [kit.needBy, today].sort().at(-1) ?? today;
  return (
    <section className="sheet stack">
      <h2>Open in this kit</h2>
      <ul className="lines">
        {kit.openItems.map((item) => (
          <li key={item}>
            <span>
              <StateMark state="waiting" word="open" /> {item}
            </span>
          </li>
        ))}
      </ul>
      {mayAdd && kit.canComplete ? (
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
      ) : null}
      {complete.error ? <Refusal problem={complete.error} /> : null}
    </section>
  );
}
