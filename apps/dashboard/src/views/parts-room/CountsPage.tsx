import { countOperations } from '@hubwright/contracts/inventory/count-operations';
import { useQuery } from '@tanstack/react-query';
import { useState } from 'react';
import { z } from 'zod';
import { useMay, useMe } from '../../api/me.ts';
import { usePages } from '../../api/pages.ts';
import { BinCountButtons } from '../../features/inventory/bin-count.tsx';
import { CountDueTable } from '../../features/inventory/CountDueTable.tsx';
import { CountTable } from '../../features/inventory/CountTable.tsx';
import { CountDialog } from '../../features/inventory/count-lot.tsx';
import type { Count, CountDue } from '../../features/inventory/counts.ts';
import { DecideCountDialog } from '../../features/inventory/decide-count.tsx';
import { binsQuery, lotQuery } from '../../features/inventory/lots.ts';
import { useScan } from '../../scan/scan-context.tsx';
import { useAddress } from '../../shell/use-address.ts';
import { InlineSelect } from '../../ui/InlineSelect.tsx';
import { PagesFrame } from '../../ui/Pages.tsx';

const spans = ['0', '7', '30', '182'] as const;
const spanWords = { '0': 'today', '7': 'a week', '30': 'a month', '182': 'half a year' } as const;
const address = z.object({ within: z.enum(spans).catch('0'), bin: z.string().catch('') });
const everyBin = 'all';

/** The lot is read when it is counted, so that the count is held against what it is then. */
function Counting({ row, onClose }: { row: CountDue; onClose: () => void }) {
  const lot = useQuery(lotQuery(row.lotId)).data;
  return lot ? <CountDialog lot={lot} onClose={onClose} /> : null;
}

function DueSection() {
  const [{ within, bin }, setAddress] = useAddress(address);
  const due = usePages(countOperations.countsDue, { withinDays: Number(within), ...(bin ? { bin } : {}) });
  const bins = useQuery(binsQuery).data?.rows ?? [];
  const mayCount = useMay(countOperations.countLot);
  const [counted, setCounted] = useState<CountDue>();
  useScan((code) => {
    const scanned = code.trim().toUpperCase();
    const isBin = bins.some((each) => each.code === scanned);
    if (isBin) setAddress({ bin: scanned });
    return isBin;
  });
  return (
    <section className="sheet stack">
      <h2>Due</h2>
      <PagesFrame of={due}>
        <CountDueTable
          rows={due.rows}
          onCount={mayCount ? setCounted : undefined}
          tools={
            <>
              <InlineSelect
                label="Due within"
                value={within}
                onChange={(value) => setAddress({ within: value })}
                choices={spans.map((value) => ({ value, text: spanWords[value] }))}
                isRequired
              />
              <InlineSelect
                label="Bin"
                value={bin || everyBin}
                onChange={(value) => setAddress({ bin: value === everyBin ? '' : value })}
                choices={[
                  { value: everyBin, text: 'every bin' },
                  ...bins.map(({ code }) => ({ value: code, text: code })),
                ]}
                isRequired
              />
              {bin && mayCount ? <BinCountButtons bin={bin} counting={due.rows[0]?.counting ?? null} /> : null}
            </>
          }
        />
      </PagesFrame>
      {counted ? <Counting row={counted} onClose={() => setCounted(undefined)} /> : null}
    </section>
  );
}

/** What is due to be counted above, what was counted and what waits for a second person below. */
export function CountsPage() {
  const counts = usePages(countOperations.listCounts, {});
  const me = useMe();
  const mayDecide = useMay(countOperations.decideCount);
  const [decided, setDecided] = useState<Count>();
  return (
    <div className="stack">
      <DueSection />
      <section className="sheet stack">
        <h2>Counted</h2>
        <PagesFrame of={counts}>
          <CountTable
            counts={counts.rows}
            mayDecide={(count) => mayDecide && count.state === 'waiting' && count.counter.id !== me.id}
            onDecide={setDecided}
          />
        </PagesFrame>
      </section>
      {decided ? <DecideCountDialog count={decided} onClose={() => setDecided(undefined)} /> : null}
    </div>
  );
}
