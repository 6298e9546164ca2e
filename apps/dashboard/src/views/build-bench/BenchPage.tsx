import { useSuspenseQuery } from '@tanstack/react-query';
import { z } from 'zod';
import { useMe } from '../../api/me.ts';
import { OutNow } from '../../features/inventory/FrozenLots.tsx';
import { TodayPanel } from '../../features/processes/TodayPanel.tsx';
import { BakeList } from '../../features/travelers/BakeList.tsx';
import { bakesQuery } from '../../features/travelers/bakes.ts';
import { benchBoardQuery } from '../../features/travelers/bench-board.ts';
import { LoadBoard } from '../../features/travelers/LoadBoard.tsx';
import { openLoadsQuery, readyParts } from '../../features/travelers/loads.ts';
import { ProcessQueues } from '../../features/travelers/ProcessQueues.tsx';
import { StepQueue } from '../../features/travelers/StepQueue.tsx';
import { UnitsForBench } from '../../features/work-orders/UnitsForBench.tsx';
import { useAddress } from '../../shell/use-address.ts';
import { ViewHead } from '../../shell/ViewHead.tsx';
import { EmptyState } from '../../ui/EmptyState.tsx';
import { useNavigateTo } from '../../ui/Link.tsx';
import { ScanField } from '../../ui/ScanField.tsx';
import { Tabs } from '../../ui/Tabs.tsx';
import styles from './bench.module.css';

const sheets = ['mine', 'bakes', 'loads', 'blocked', 'units', 'today', 'queues'] as const;
const address = z.object({ sheet: z.enum(sheets).catch('mine') });

export function BenchPage() {
  const board = useSuspenseQuery(benchBoardQuery).data;
  const loads = useSuspenseQuery(openLoadsQuery).data.rows;
  const bakes = useSuspenseQuery(bakesQuery).data.rows;
  const me = useMe();
  const [{ sheet }, setAddress] = useAddress(address);
  const navigate = useNavigateTo();
  const scan = (code: string) => {
    navigate(`/find?code=${encodeURIComponent(code.trim().toUpperCase())}`);
    return true;
  };
  return (
    <>
      <div className={styles.head}>
        <ViewHead title="Build bench" question="What is mine, and is my tray empty?" />
        <ScanField label="Scan a traveler, a work order or a serial" onScan={scan} />
      </div>
      <div className="sheet">
        <Tabs
          label="Work at the bench"
          selected={sheet}
          onSelect={(id) => setAddress({ sheet: id as (typeof sheets)[number] })}
          sheets={[
            {
              id: 'mine',
              title: `Mine to sign (${board.mine.length})`,
              content: (
                <StepQueue
                  steps={board.mine}
                  empty={
                    <EmptyState title="Nothing waits for your signature">
                      See what is blocked, or which units can be taken apart or built.
                    </EmptyState>
                  }
                />
              ),
            },
            { id: 'bakes', title: `Bakes (${bakes.length})`, content: <BakeList /> },
            {
              id: 'loads',
              title: `Loads (${loads.length})`,
              content: <LoadBoard loads={loads} ready={readyParts(board.mine, loads)} signer={me} />,
            },
            {
              id: 'blocked',
              title: `Blocked (${board.blocked.length})`,
              content: <StepQueue steps={board.blocked} empty={<EmptyState title="Nothing is blocked" />} />,
            },
            { id: 'units', title: 'Units', content: <UnitsForBench /> },
            {
              id: 'today',
              title: 'Due today',
              content: (
                <div className="stack">
                  <TodayPanel />
                  <OutNow />
                </div>
              ),
            },
            { id: 'queues', title: 'Queues', content: <ProcessQueues board={board} /> },
          ]}
        />
      </div>
    </>
  );
}
