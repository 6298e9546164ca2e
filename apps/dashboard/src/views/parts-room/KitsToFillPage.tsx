import { allocationOperations } from '@hubwright/contracts/kits/allocation-operations';
import { useSuspenseQuery } from '@tanstack/react-query';
import { useState } from 'react';
import { useMay } from '../../api/me.ts';
import { usePages } from '../../api/pages.ts';
import { AcceptFill } from '../../features/kits/accept-fill.tsx';
import { AllocationPolicy } from '../../features/kits/change-allocation-policy.tsx';
import { FillTable, LeftOutTable } from '../../features/kits/FillTable.tsx';
import { toFillQuery } from '../../features/kits/kits-to-fill.ts';
import { countOf } from '../../format/numbers.ts';
import { PagesFrame } from '../../ui/Pages.tsx';
import { StateMark } from '../../ui/StateMark.tsx';

/** Which kits to finish from the shelf so that most promised value is not late, why, and the one step to promise it to them. */
export function KitsToFillPage() {
  const { kits, fillable, proof, isBest, promised } = useSuspenseQuery(toFillQuery).data;
  const leftOut = usePages(allocationOperations.kitsLeftOut, {});
  const mayAccept = useMay(allocationOperations.acceptFill);
  const [dropped, setDropped] = useState<ReadonlySet<string>>(new Set());
  const chosen = kits.filter(({ kitId }) => !dropped.has(kitId));
  const choose = (kitId: string, isChosen: boolean) => {
    const next = new Set(dropped);
    if (isChosen) next.delete(kitId);
    else next.add(kitId);
    setDropped(next);
  };
  return (
    <div className="stack">
      <div className="sheet stack">
        <AllocationPolicy />
        <p className="row tight">
          <StateMark state={isBest ? 'passed' : 'note'} word={isBest ? 'proven' : 'not proven'} /> {proof}
        </p>
        {fillable > kits.length ? (
          <p className="soft">
            The first {kits.length} of {countOf(fillable, 'kit')}; the others follow once these are promised.
          </p>
        ) : null}
        {promised > 0 ? (
          <p className="soft">
            {countOf(promised, 'more kit')} has everything promised to it and only waits to be pulled.
          </p>
        ) : null}
        <FillTable
          rows={kits}
          chosen={new Set(chosen.map(({ kitId }) => kitId))}
          onChoose={mayAccept ? choose : undefined}
          tools={
            mayAccept && kits.length > 0 ? <AcceptFill kits={chosen} onAccepted={() => setDropped(new Set())} /> : null
          }
        />
      </div>
      <section className="sheet stack">
        <h2>Left out, and what they lack</h2>
        <PagesFrame of={leftOut}>
          <LeftOutTable rows={leftOut.rows} />
        </PagesFrame>
      </section>
    </div>
  );
}
