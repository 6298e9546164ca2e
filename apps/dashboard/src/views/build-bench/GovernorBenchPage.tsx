import { useSuspenseQuery } from '@tanstack/react-query';
import { z } from 'zod';
import { useMe } from '../../api/me.ts';
import { BenchList } from '../../features/governor-tests/BenchList.tsx';
import { programsQuery, runsQuery, waitingQuery } from '../../features/governor-tests/governor.ts';
import { Programs } from '../../features/governor-tests/Programs.tsx';
import { RunTable } from '../../features/governor-tests/RunTable.tsx';
import { WaitingList } from '../../features/governor-tests/WaitingList.tsx';
import { useAddress } from '../../shell/use-address.ts';
import { Tabs } from '../../ui/Tabs.tsx';

const sheets = ['waiting', 'runs', 'programs', 'benches'] as const;
const address = z.object({ sheet: z.enum(sheets).catch('waiting') });

/** The governor bench: what waits for it, what was on it, and by which programs. */
export function GovernorBenchPage() {
  const me = useMe();
  const waiting = useSuspenseQuery(waitingQuery).data.rows;
  const runs = useSuspenseQuery(runsQuery).data.rows;
  const programs = useSuspenseQuery(programsQuery('current')).data.rows;
  const [{ sheet }, setAddress] = useAddress(address);
  return (
    <div className="sheet stack">
      <Tabs
        label="Governor bench"
        selected={sheet}
        onSelect={(id) => setAddress({ sheet: id as (typeof sheets)[number] })}
        sheets={[
          {
            id: 'waiting',
            title: `Waiting (${waiting.length})`,
            content: <WaitingList rows={waiting} programs={programs} />,
          },
          { id: 'runs', title: 'Runs', content: <RunTable rows={runs} /> },
          { id: 'programs', title: `Programs (${programs.length})`, content: <Programs signer={me} /> },
          { id: 'benches', title: 'Benches', content: <BenchList /> },
        ]}
      />
    </div>
  );
}
