import { findingOperations } from '@hubwright/contracts/findings/operations';
import { useState } from 'react';
import { z } from 'zod';
import { useMay, useMe } from '../../api/me.ts';
import { DisposeFinding } from '../../features/findings/dispose-finding.tsx';
import { FindingSheet } from '../../features/findings/FindingSheet.tsx';
import { FindingTable } from '../../features/findings/FindingTable.tsx';
import { type Finding, useFindings } from '../../features/findings/findings.ts';
import { FitReplacement } from '../../features/findings/fit-replacement.tsx';
import { PhotoStrip } from '../../features/photos/PhotoStrip.tsx';
import { useAddress } from '../../shell/use-address.ts';
import { Button } from '../../ui/Button.tsx';
import { PagesFrame } from '../../ui/Pages.tsx';
import { Select } from '../../ui/Select.tsx';
import styles from './inspection.module.css';

const filters = ['undecided', 'undone', 'all'] as const;
const address = z.object({ show: z.enum(filters).catch('undone'), open: z.string().catch('') });
const choices = [
  { value: 'undecided', text: 'To be decided' },
  { value: 'undone', text: 'Not finished' },
  { value: 'all', text: 'All' },
] as const;

function Actions({ finding }: { finding: Finding }) {
  const me = useMe();
  const mayDecide = useMay(findingOperations.disposeFinding) && finding.disposition === null;
  const mayDecideAnew = useMay(findingOperations.supersedeDisposition) && finding.disposition !== null;
  const mayFit = useMay(findingOperations.fitReplacement) && finding.disposition === 'reject' && !finding.done;
  const [asking, setAsking] = useState<'decide' | 'fit'>();
  const close = () => setAsking(undefined);
  return (
    <>
      {mayDecide ? (
        <Button weight="next" onPress={() => setAsking('decide')}>
          Decide and sign
        </Button>
      ) : null}
      {mayDecideAnew ? (
        <Button weight={finding.answer === 'declined' ? 'next' : 'plain'} onPress={() => setAsking('decide')}>
          Decide anew
        </Button>
      ) : null}
      {mayFit ? <Button onPress={() => setAsking('fit')}>Record the replacement</Button> : null}
      {asking === 'decide' ? <DisposeFinding finding={finding} signer={me} onClose={close} /> : null}
      {asking === 'fit' ? <FitReplacement finding={finding} onClose={close} /> : null}
    </>
  );
}

export function FindingsPage() {
  const [{ show, open }, setAddress] = useAddress(address);
  const findings = useFindings(show);
  const me = useMe();
  const opened = findings.rows.find((row) => row.id === open);
  return (
    <div className={opened ? styles.beside : ''}>
      <div className="sheet">
        <PagesFrame of={findings}>
          <FindingTable
            rows={findings.rows}
            onOpen={(finding) => setAddress({ open: finding.id })}
            tools={
              <Select
                label="Show"
                value={show}
                onChange={(value) => setAddress({ show: value, open: '' })}
                choices={choices}
                isRequired
              />
            }
          />
        </PagesFrame>
      </div>
      {opened ? (
        <FindingSheet
          finding={opened}
          photos={<PhotoStrip key={opened.id} shown={{ kind: 'finding', id: opened.id }} viewer={me} />}
          actions={<Actions key={opened.id} finding={opened} />}
        />
      ) : null}
    </div>
  );
}
