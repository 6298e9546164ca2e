import { useState } from 'react';
import { type ScanOutcome, useScanQueue } from '../../features/kits/issue-lot.ts';
import type { Kit } from '../../features/kits/kit-detail.ts';
import { ScanOutcomes } from '../../features/kits/ScanOutcomes.tsx';
import { keepSound, soundIsOn } from '../../features/kits/tones.ts';
import { useUndoScan } from '../../features/kits/undo-scan.ts';
import { Checkbox } from '../../ui/Checkbox.tsx';
import { DecimalField } from '../../ui/DecimalField.tsx';
import { Refusal } from '../../ui/Refusal.tsx';
import { ScanField } from '../../ui/ScanField.tsx';
import styles from './parts-room.module.css';

/** Codes of other things that a scanner may meet here: they open what they name. */
const others = /^(KIT|WO|TR|PO)-/;

/** One scan a line: the lot goes into the tray for the line that needs it. */
export function KitScanning({ kit }: { kit: Kit }) {
  const [isLoud, setLoud] = useState(soundIsOn);
  const { outcomes, scan, settle } = useScanQueue(kit.id, isLoud);
  const undo = useUndoScan(kit.id);
  const [amount, setAmount] = useState('');
  const take = (code: string) => {
    const typed = code.trim().toUpperCase();
    if (others.test(typed)) return false;
    scan(typed, /^[1-9]\d*$/.test(amount) ? Number(amount) : undefined);
    setAmount('');
    return true;
  };
  const takeBack = (outcome: ScanOutcome & { kind: 'taken' }) =>
    undo.mutate(outcome.issued, { onSuccess: () => settle({ id: outcome.id, code: outcome.code, kind: 'undone' }) });
  return (
    <div className="no-print">
      <div className={styles.scanning}>
        <ScanField
          label="Scan a lot into the tray"
          hint="One scan a line; a scan is taken wherever you are on this page."
          onScan={take}
        />
        <div className="stack tight">
          <DecimalField
            label="Pieces of the next scan"
            hint="Empty: all the line still needs"
            decimals={0}
            value={amount}
            onChange={setAmount}
            onKeyDown={(event) => event.key === 'Enter' && (event.target as HTMLElement).blur()}
          />
          <Checkbox
            isSelected={isLoud}
            onChange={(isOn) => {
              setLoud(isOn);
              keepSound(isOn);
            }}
          >
            Sound at each scan
          </Checkbox>
        </div>
        <div className={styles.outcomes}>
          <ScanOutcomes outcomes={outcomes} lines={kit.lines} onUndo={takeBack} />
          {undo.error ? <Refusal problem={undo.error} /> : null}
        </div>
      </div>
    </div>
  );
}
