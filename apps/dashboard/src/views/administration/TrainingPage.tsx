import { z } from 'zod';
import { ExpiringAuthorisations } from '../../features/people/ExpiringAuthorisations.tsx';
import { InspectionLists } from '../../features/people/InspectionLists.tsx';
import { TrainingDue } from '../../features/people/TrainingDue.tsx';
import { TrainingItems } from '../../features/people/TrainingItems.tsx';
import { useToday } from '../../format/use-today.ts';
import { useAddress } from '../../shell/use-address.ts';
import { InlineSelect } from '../../ui/InlineSelect.tsx';

const address = z.object({ days: z.enum(['30', '90']).catch('90') });
const choices = [
  { value: '30' as const, text: '30 days' },
  { value: '90' as const, text: '90 days' },
];

/** What comes to an end soon, what an authorisation needs, and who may inspect. */
export function TrainingPage() {
  const [{ days }, setAddress] = useAddress(address);
  const today = useToday();
  return (
    <div className="stack">
      <section className="sheet stack" aria-labelledby="ending">
        <h2 id="ending">Coming to an end</h2>
        <div className="row">
          <InlineSelect
            label="Within"
            value={days}
            onChange={(value) => setAddress({ days: value })}
            choices={choices}
            isRequired
          />
        </div>
        <ExpiringAuthorisations today={today} withinDays={Number(days)} />
        <TrainingDue today={today} withinDays={Number(days)} />
      </section>
      <TrainingItems />
      <InspectionLists />
    </div>
  );
}
