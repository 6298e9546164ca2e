import { useSyncExternalStore } from 'react';

/** Whether the server has said that nobody is signed in any more, while pages are still open. */
class SessionLost {
  private lost = false;
  private readonly listeners = new Set<() => void>();

  readonly subscribe = (listener: () => void) => {
    this.listeners.add(listener);
    return () => this.listeners.delete(listener);
  };

  readonly current = () => this.lost;

  set(lost: boolean) {
    if (this.lost === lost) return;
    this.lost = lost;
    for (const listener of this.listeners) listener();
  }
}

export const sessionLost = new SessionLost();

export function useSessionLost(): boolean {
  return useSyncExternalStore(sessionLost.subscribe, sessionLost.current);
}
