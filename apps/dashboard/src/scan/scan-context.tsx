import { createContext, type ReactNode, useContext, useEffect, useRef, useState } from 'react';
import { WedgeReader } from './wedge.ts';

/** Takes a scanned code; answers true when it was this one's, false to let the next try. */
export type ScanTaker = (code: string) => boolean;

/** Views and fields that want scans first, newest on top; what none takes goes to `fallback`. */
class ScanDesk {
  private takers: ScanTaker[] = [];

  add(taker: ScanTaker): () => void {
    this.takers = [taker, ...this.takers];
    return () => {
      this.takers = this.takers.filter((other) => other !== taker);
    };
  }

  /** Takes what is nobody's view's business, such as a badge, before any view sees it. */
  first: ScanTaker = () => false;

  /** Where codes go that no view takes. */
  lastResort: (code: string) => void = () => undefined;

  deliver(code: string): void {
    if (this.first(code)) return;
    if (!this.takers.some((taker) => taker(code))) this.lastResort(code);
  }
}

const ScanContext = createContext<ScanDesk | undefined>(undefined);

/** True when keys belong to whatever has the focus: a scan there is simply typed. */
export function isTyping(target: EventTarget | null): boolean {
  if (!(target instanceof HTMLElement)) return false;
  return target.isContentEditable || ['INPUT', 'TEXTAREA', 'SELECT'].includes(target.tagName);
}

/** Listens for a barcode wedge anywhere on the page, outside of inputs. */
export function ScanProvider({
  first,
  fallback,
  children,
}: {
  first: ScanTaker;
  fallback: (code: string) => void;
  children: ReactNode;
}) {
  const [desk] = useState(() => new ScanDesk());
  desk.first = first;
  desk.lastResort = fallback;
  useEffect(() => {
    const reader = new WedgeReader();
    const onKeyDown = (event: KeyboardEvent) => {
      if (event.ctrlKey || event.metaKey || event.altKey || event.isComposing || isTyping(event.target)) return;
      const code = reader.press(event.key, event.timeStamp);
      // A scan must not press the button that happens to have the focus, nor move a list by its letters.
      if (code !== undefined || reader.isRunning()) {
        event.preventDefault();
        event.stopPropagation();
      }
      if (code !== undefined) desk.deliver(code);
    };
    window.addEventListener('keydown', onKeyDown, { capture: true });
    return () => window.removeEventListener('keydown', onKeyDown, { capture: true });
  }, [desk]);
  return <ScanContext.Provider value={desk}>{children}</ScanContext.Provider>;
}

/** Hands in a code that was typed where scans are taken: it goes the same way as a scanned one. */
export function useDeliverScan(): (code: string) => void {
  const desk = useContext(ScanContext);
  return (code) => desk?.deliver(code);
}

/** Lets the calling view take scans before anyone above it, as long as it is on screen. */
export function useScan(taker: ScanTaker): void {
  const desk = useContext(ScanContext);
  const latest = useRef(taker);
  latest.current = taker;
  useEffect(() => desk?.add((code) => latest.current(code)), [desk]);
}
