import { kitsOperations } from '@hubwright/contracts/kits/operations';
import { useCommand } from '../../api/command.ts';
import { countOf } from '../../format/numbers.ts';
import { Button, type Weight } from '../../ui/Button.tsx';
import { Refusal } from '../../ui/Refusal.tsx';
import { StateMark } from '../../ui/StateMark.tsx';
import type { Kit } from './kit-detail.ts';

/** Promises to the kit all the shelf can give, and says line by line what it could not and why. */
export function ReserveKit({ kit, weight }: { kit: Kit; weight: Weight }) {
  const reserve = useCommand(kitsOperations.reserveKit);
  const missing = reserve.data?.missing ?? [];
  const partOf = (lineId: string) => kit.lines.find((line) => line.id === lineId);
  return (
    <div className="stack">
      <div className="row">
        <Button
          weight={weight}
          isPending={reserve.isPending}
          onPress={() => reserve.mutate({ input: { kitId: kit.id } })}
        >
          Promise what the shelf can give
        </Button>
        {reserve.data ? (
          <span role="status">
            {reserve.data.reserved === 0
              ? 'Nothing more could be promised.'
              : `Promised to ${kit.code} what the shelf has for it.`}
          </span>
        ) : null}
      </div>
      {reserve.error ? <Refusal problem={reserve.error} /> : null}
      {missing.length > 0 ? (
        <details>
          <summary>{countOf(missing.length, 'line')} could not be promised in full: why</summary>
          <ul className="lines">
            {missing.map(({ lineId, quantity, cause }) => (
              <li key={lineId}>
                <span>
                  <span className="code">{partOf(lineId)?.part.number}</span> {partOf(lineId)?.position}: {cause}
                </span>
                <StateMark state="short" word={`${quantity} missing`} />
              </li>
            ))}
          </ul>
        </details>
      ) : null}
    </div>
  );
}
