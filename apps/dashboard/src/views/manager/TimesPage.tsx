import { clockOperations } from '@hubwright/contracts/work-orders/clock-operations';
import { useState } from 'react';
import { z } from 'zod';
import { useMay } from '../../api/me.ts';
import { usePages } from '../../api/pages.ts';
import type { TimeEntry } from '../../features/clock/clock.ts';
import { MendTime } from '../../features/clock/mend-time.tsx';
import { RealTimes } from '../../features/clock/RealTimes.tsx';
import { TimeTable } from '../../features/clock/TimeTable.tsx';
import { useAddress } from '../../shell/use-address.ts';
import { DateField } from '../../ui/DateField.tsx';
import { PagesFrame } from '../../ui/Pages.tsx';
import { Select } from '../../ui/Select.tsx';

const address = z.object({ from: z.string().catch(''), show: z.enum(['all', 'forgotten']).catch('all') });
const choices = [
  { value: 'all', text: 'All' },
  { value: 'forgotten', text: 'Forgotten' },
] as const;

export function TimesPage() {
  const [{ from, show }, setAddress] = useAddress(address);
  const entries = usePages(clockOperations.listTimes, {
    forgotten: show === 'forgotten' ? 'yes' : 'no',
    ...(from === '' ? {} : { from }),
  });
  const mayMend = useMay(clockOperations.mendTime);
  const [mending, setMending] = useState<TimeEntry>();
  return (
    <div className="stack">
      <section className="sheet stack" aria-labelledby="real-times">
        <h2 id="real-times">Real against standard time</h2>
        <RealTimes from={from} />
      </section>
      <section className="sheet" aria-labelledby="entries">
        <h2 id="entries">Where the hours went</h2>
        <PagesFrame of={entries}>
          <TimeTable
            entries={entries.rows}
            onMend={mayMend ? setMending : undefined}
            tools={
              <>
                <DateField name="from" label="Since" value={from} onChange={(date) => setAddress({ from: date })} />
                <Select
                  label="Show"
                  value={show}
                  onChange={(value) => setAddress({ show: value })}
                  choices={choices}
                  isRequired
                />
              </>
            }
          />
        </PagesFrame>
      </section>
      {mending ? <MendTime entry={mending} onClose={() => setMending(undefined)} /> : null}
    </div>
  );
}
