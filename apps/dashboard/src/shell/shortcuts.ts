import { useEffect } from 'react';
import { isTyping } from '../scan/scan-context.tsx';

/** A scanned code may hold the same character: a key that others follow at once was not a person's. */
const settleMs = 80;

/** Single keys that act anywhere outside of entries, such as `/` and `?`. */
export function useShortcuts(actions: Readonly<Record<string, () => void>>): void {
  useEffect(() => {
    let timer: ReturnType<typeof setTimeout> | undefined;
    const onKeyDown = (event: KeyboardEvent) => {
      clearTimeout(timer);
      const action = actions[event.key];
      if (!action || event.ctrlKey || event.metaKey || event.altKey || isTyping(event.target)) return;
      if (document.querySelector('.veil')) return;
      event.preventDefault();
      timer = setTimeout(action, settleMs);
    };
    // Capture, to see also the keys of a scan that are stopped before they reach the page.
    window.addEventListener('keydown', onKeyDown, { capture: true });
    return () => {
      clearTimeout(timer);
      window.removeEventListener('keydown', onKeyDown, { capture: true });
    };
  }, [actions]);
}
