import { intervalOperations } from '@hubwright/contracts/units/interval-operations';
import { Suspense, useState } from 'react';
import { useMay } from '../../api/me.ts';
import { useToday } from '../../format/use-today.ts';
import { Button } from '../../ui/Button.tsx';
import { Skeleton } from '../../ui/Skeleton.tsx';
import { IntervalTable } from './IntervalTable.tsx';
import { ReportInstalled } from './report-interval.tsx';
import { ReportRemoved } from './report-removed.tsx';
import type { Interval } from './times-as-of.ts';
import { WithdrawInterval } from './withdraw-interval.tsx';

/** On which aircraft a unit was, and what the desk hears of it. */
export function Intervals({ itemId }: { itemId: string }) {
  const mayReport = useMay(intervalOperations.reportInstalled);
  const today = useToday();
  const [isReporting, setReporting] = useState(false);
  const [removed, setRemoved] = useState<Interval>();
  const [corrected, setCorrected] = useState<Interval>();
  const [withdrawn, setWithdrawn] = useState<Interval>();
  return (
    <Suspense fallback={<Skeleton lines={3} />}>
      <IntervalTable
        itemId={itemId}
        on={mayReport ? { removed: setRemoved, corrected: setCorrected, withdrawn: setWithdrawn } : undefined}
        tools={mayReport ? <Button onPress={() => setReporting(true)}>Report an installation</Button> : null}
      />
      {isReporting ? <ReportInstalled itemId={itemId} onClose={() => setReporting(false)} /> : null}
      {corrected ? <ReportInstalled itemId={itemId} was={corrected} onClose={() => setCorrected(undefined)} /> : null}
      {removed ? <ReportRemoved was={removed} today={today} onClose={() => setRemoved(undefined)} /> : null}
      {withdrawn ? <WithdrawInterval was={withdrawn} onClose={() => setWithdrawn(undefined)} /> : null}
    </Suspense>
  );
}
