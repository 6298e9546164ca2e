import { useState } from 'react';
import { type ScanTaker, useScan } from '../scan/scan-context.tsx';
import { TextField } from './TextField.tsx';

export interface ScanFieldProps {
  label: string;
  hint?: string;
  /** Takes a code, scanned anywhere on the page or typed here; false when it is none of this view's. */
  onScan: ScanTaker;
}

/** Always alive: a wedge scan anywhere on the page lands here, and the code can be typed by hand. The last code stays in sight. */
export function ScanField({ label, hint, onScan }: ScanFieldProps) {
  const [text, setText] = useState('');
  const [last, setLast] = useState<string>();
  const take = (code: string) => {
    const taken = onScan(code);
    if (taken) setLast(code);
    return taken;
  };
  useScan(take);
  return (
    <form
      className="scan-field"
      onSubmit={(event) => {
        event.preventDefault();
        const code = text.trim();
        if (code !== '') take(code);
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
        {last ? `Last scan: ${last}` : 'Ready to scan'}
      </p>
    </form>
  );
}
