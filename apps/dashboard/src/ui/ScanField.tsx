import { useState } from 'react';
import { type ScanTaker, useDeliverScan, useScan } from '../scan/scan-context.tsx';
import { TextField } from './TextField.tsx';

export interface ScanFieldProps {
  label: string;
  hint?: string;
  /** Takes a code, scanned anywhere on the page or typed here; false when it is none of this view's. */
  onScan: ScanTaker;
}

function lastWords({ code, taken }: { code: string; taken: boolean }): string {
  return taken ? `Last scan: ${code}` : `${code} is not for this page: it is looked up instead.`;
}

/**
 * Always alive: a wedge scan anywhere on the page lands here, and the code can be typed by hand. The last code stays in
 * sight; one that is none of this view's is said so and looked for elsewhere, typed or scanned alike.
 */
export function ScanField({ label, hint, onScan }: ScanFieldProps) {
  const [text, setText] = useState('');
  const [last, setLast] = useState<{ code: string; taken: boolean }>();
  const deliver = useDeliverScan();
  useScan((code) => {
    const taken = onScan(code);
    setLast({ code, taken });
    return taken;
  });
  return (
    <form
      className="scan-field"
      onSubmit={(event) => {
        event.preventDefault();
        const code = text.trim();
        if (code !== '') deliver(code);
        setText('');
      }}
    >
      <TextField
        label={label}
        {...(hint ? { hint } : {})}
        value={text}
        onChange={setText}
        autoComplete="off"
        isRequired
      />
      <p className="soft small" aria-live="polite">
        {last ? lastWords(last) : 'Ready to scan'}
      </p>
    </form>
  );
}
