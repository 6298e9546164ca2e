import { useSuspenseQuery } from '@tanstack/react-query';
import { z } from 'zod';
import { DueTable } from '../../features/due-dates/DueTable.tsx';
import { comingDueQuery } from '../../features/due-dates/due.ts';
import { useAddress } from '../../shell/use-address.ts';
import { InlineSelect } from '../../ui/InlineSelect.tsx';

const spans = ['30', '90', '180', '365', '1095'] as const;
const address = z.object({ days: z.enum(spans).catch('180') });
const spanWords: Record<(typeof spans)[number], string> = {
  '30': 'within 30 days',
  '90': 'within 90 days',
  '180': 'within half a year',
  '365': 'within a year',
  '1095': 'within three years',
};

/** The fleet out there: whose unit comes due next, so that the desk can tell them before it is urgent. */
export function ComingDuePage() {
  const [{ days }, setAddress] = useAddress(address);
  const { rows } = useSuspenseQuery(comingDueQuery(Number(days))).data;
  return (
    <div className="sheet">
      <DueTable
        rows={rows}
        tools={
          <InlineSelect
            label="How far ahead"
            value={days}
            onChange={(value) => setAddress({ days: value })}
            choices={spans.map((value) => ({ value, text: spanWords[value] }))}
            isRequired
          />
        }
      />
    </div>
  );
}
