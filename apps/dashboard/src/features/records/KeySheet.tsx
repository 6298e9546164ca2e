import { recordOperations } from '@hubwright/contracts/records/operations';
import { useState } from 'react';
import { useMay } from '../../api/me.ts';
import { AgeText, InstantText } from '../../format/values.tsx';
import { Button } from '../../ui/Button.tsx';
import type { Signer } from '../../ui/SignCommand.tsx';
import { type Keeping, keyWords } from './record-keeping.ts';
import { RotateKey } from './rotate-shop-key.tsx';

/** What outsiders compare: the names of the shop's keys, and where the chains were last anchored. */
export function KeySheet({ keeping, signer }: { keeping: Keeping; signer: Signer }) {
  const mayRotate = useMay(recordOperations.rotateShopKey);
  const [isOpen, setOpen] = useState(false);
  const { anchor, keys } = keeping;
  return (
    <section className="sheet stack" aria-label="Anchors and keys">
      <h2>Anchors and keys</h2>
      <p>
        Every ten minutes the end of every record chain is signed with the shop’s key. Who holds an export compares the
        name of its key with the one here.
      </p>
      {anchor ? (
        <p>
          Anchor {anchor.sequence}, <AgeText instant={anchor.at} />:{' '}
          <span className="code">{keyWords(anchor.hash.slice(0, 16))}…</span>
        </p>
      ) : (
        <p className="soft">
          No anchor yet: the first one comes within ten minutes of the first entry, and makes the key.
        </p>
      )}
      <ol className="plain stack">
        {keys.map(({ id, since, signedByTheOneBefore }, index) => (
          <li key={id}>
            <span className="code">{keyWords(id)}</span>
            <br />
            <span className="soft small">
              since <InstantText instant={since} />
              {index === keys.length - 1
                ? ', the first'
                : signedByTheOneBefore
                  ? ', signed by the one before'
                  : ', NOT signed by the one before'}
            </span>
          </li>
        ))}
      </ol>
      {mayRotate && keys.length > 0 ? (
        <div className="row no-print">
          <Button onPress={() => setOpen(true)}>Replace the key</Button>
        </div>
      ) : null}
      {isOpen ? <RotateKey signer={signer} onClose={() => setOpen(false)} /> : null}
    </section>
  );
}
