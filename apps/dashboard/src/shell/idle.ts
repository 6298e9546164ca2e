import { useEffect, useRef } from 'react';

const key = 'hubwright-touched';
const lookEveryMs = 5_000;

/** When anyone last touched a page of this dashboard on this device, in any of its tabs. */
function lastTouch(): number {
  return Number(localStorage.getItem(key) ?? 0);
}

/** Calls `onIdle` once nobody has touched any tab for so many minutes; again only after somebody did. */
export function useIdle(minutes: number, onIdle: () => void): void {
  const latest = useRef(onIdle);
  latest.current = onIdle;
  useEffect(() => {
    let noted = Date.now();
    localStorage.setItem(key, String(noted));
    let told = false;
    const touched = () => {
      told = false;
      if (Date.now() - noted < 1_000) return;
      noted = Date.now();
      localStorage.setItem(key, String(noted));
    };
    const timer = setInterval(() => {
      if (told || Date.now() - lastTouch() < minutes * 60_000) return;
      told = true;
      latest.current();
    }, lookEveryMs);
    const events = ['pointerdown', 'keydown', 'wheel'] as const;
    for (const event of events) window.addEventListener(event, touched, { capture: true, passive: true });
    return () => {
      clearInterval(timer);
      for (const event of events) window.removeEventListener(event, touched, { capture: true });
    };
  }, [minutes]);
}
