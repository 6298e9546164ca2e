import { type ReactNode, useState } from 'react';
import { Button } from './Button.tsx';

function wasRead(key: string): boolean {
  try {
    return localStorage.getItem(key) === 'read';
  } catch {
    return false;
  }
}

function markRead(key: string) {
  try {
    localStorage.setItem(key, 'read');
  } catch {
    // Storage may be forbidden; the hint then comes back with the next visit.
  }
}

/** What someone new to a view is told, until they say on this device that they understood. */
export function FirstHint({ id, title, children }: { id: string; title: string; children: ReactNode }) {
  const key = `hubwright.hint.${id}`;
  const [isRead, setRead] = useState(() => wasRead(key));
  if (isRead) return null;
  return (
    <aside className="first-hint no-print" aria-label={title}>
      <div className="stack tight">
        <strong>{title}</strong>
        {children}
      </div>
      <Button
        onPress={() => {
          markRead(key);
          setRead(true);
        }}
      >
        Understood
      </Button>
    </aside>
  );
}
