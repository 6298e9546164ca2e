import { recordOperations } from '@hubwright/contracts/records/operations';
import { useState } from 'react';
import { useMay } from '../../api/me.ts';
import { InstantText } from '../../format/values.tsx';
import { Button } from '../../ui/Button.tsx';
import type { Signer } from '../../ui/SignCommand.tsx';
import type { Keeping } from './record-keeping.ts';
import { SetRetention } from './set-retention.tsx';

/** How long records must be kept, by approval, and what was destroyed since. */
export function RetentionSheet({ keeping, signer }: { keeping: Keeping; signer: Signer }) {
  const maySet = useMay(recordOperations.setRetention);
  const [isOpen, setOpen] = useState(false);
  const longest = Math.max(...keeping.retentionRules.map(({ years }) => years));
  return (
    <section className="sheet stack" aria-label="How long records are kept">
      <h2>How long records are kept</h2>
      <dl className="facts">
        {keeping.retentionRules.map(({ approval, years }) => (
          <div key={approval}>
            <dt>{approval}</dt>
            <dd>{years} years</dd>
          </div>
        ))}
      </dl>
      <p className="soft small">
        Nothing is destroyed before {longest} years after the approval for return to service, and then only by the
        person who runs the server (npm run purge). The current regulations and the local authority decide what your
        shop must keep.
      </p>
      {keeping.purges.length === 0 ? (
        <p>Nothing has been destroyed.</p>
      ) : (
        <ul className="plain stack">
          {keeping.purges.map(({ id, at, what, by, policy }) => (
            <li key={id}>
              {what} on <InstantText instant={at} />, by {by}
              <br />
              <span className="soft small">{policy}</span>
            </li>
          ))}
        </ul>
      )}
      {maySet ? (
        <div className="row no-print">
          <Button onPress={() => setOpen(true)}>Change how long</Button>
        </div>
      ) : null}
      {isOpen ? <SetRetention keeping={keeping} signer={signer} onClose={() => setOpen(false)} /> : null}
    </section>
  );
}
