import { useSyncExternalStore } from 'react';

/** What the person chose on this device; `system` follows the device. `public/theme.js` reads the same key before the first paint. */
export type Theme = 'system' | 'light' | 'dark';

const key = 'hubwright.theme';
const listeners = new Set<() => void>();

function current(): Theme {
  const { theme } = document.documentElement.dataset;
  return theme === 'light' || theme === 'dark' ? theme : 'system';
}

export function chooseTheme(theme: Theme): void {
  const { dataset } = document.documentElement;
  if (theme === 'system') delete dataset.theme;
  else dataset.theme = theme;
  try {
    if (theme === 'system') localStorage.removeItem(key);
    else localStorage.setItem(key, theme);
  } catch {
    // Storage may be forbidden; the choice then lasts as long as the page.
  }
  for (const listener of listeners) listener();
}

export function useTheme(): Theme {
  return useSyncExternalStore((listener) => {
    listeners.add(listener);
    return () => listeners.delete(listener);
  }, current);
}
