import { z } from 'zod';
import { PresenceWeek } from '../../features/people/PresenceWeek.tsx';
import { useAddress } from '../../shell/use-address.ts';

const address = z.object({ week: z.string().catch('') });

/** People by the days of one week. */
export function PresencePage() {
  const [{ week }, setAddress] = useAddress(address);
  return (
    <div className="sheet">
      <PresenceWeek week={week} onWeek={(monday) => setAddress({ week: monday })} />
    </div>
  );
}
