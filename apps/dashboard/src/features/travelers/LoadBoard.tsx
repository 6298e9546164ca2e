import { loadOperations } from '@hubwright/contracts/work-orders/load-operations';
import { useState } from 'react';
import { useMay } from '../../api/me.ts';
import { countOf } from '../../format/numbers.ts';
import { Button } from '../../ui/Button.tsx';
import { EmptyState } from '../../ui/EmptyState.tsx';
import type { Signer } from '../../ui/SignCommand.tsx';
import { LoadSheet } from './LoadSheet.tsx';
import type { Load, ReadyPart } from './loads.ts';
import { StartLoad } from './start-load.tsx';

export interface LoadBoardProps {
  loads: readonly Load[];
  /** Parts that may go into a load now. */
  ready: readonly ReadyPart[];
  signer: Signer;
}

/** Open loads, and the start of a new one from the parts that are ready. */
export function LoadBoard({ loads, ready, signer }: LoadBoardProps) {
  const mayStart = useMay(loadOperations.startLoad);
  const [isStarting, setStarting] = useState(false);
  return (
    <div className="stack">
      {mayStart ? (
        <div className="row actions">
          <Button weight="next" isDisabled={ready.length === 0} onPress={() => setStarting(true)}>
            Put a load together
          </Button>
          <span className="soft small">
            {ready.length === 0
              ? 'No part of yours is ready for a step that is done in loads.'
              : `${countOf(ready.length, 'part')} could go into one.`}
          </span>
        </div>
      ) : null}
      {loads.length === 0 ? (
        <EmptyState title="No load is open">
          A load is one tank, oven or cabinet full, signed once for all parts.
        </EmptyState>
      ) : null}
      {loads.map((load) => (
        <LoadSheet key={load.id} load={load} signer={signer} />
      ))}
      {isStarting ? <StartLoad ready={ready} onClose={() => setStarting(false)} /> : null}
    </div>
  );
}
