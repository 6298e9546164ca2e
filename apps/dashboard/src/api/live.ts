import type { QueryClient } from '@tanstack/react-query';
import { useSyncExternalStore } from 'react';
import { StaleNouns } from './stale-nouns.ts';

export type LiveState = 'connecting' | 'live' | 'reconnecting';

const hiddenPauseMs = 60_000;
const longestWaitMs = 30_000;

/**
 * Listens to /api/live and makes queries stale by noun. After any gap everything is read again: an event may have been
 * missed. A tab hidden for a minute lets go of its connection, since a browser allows only six to one plain-HTTP server.
 */
class Live {
  private source: EventSource | undefined;
  private state: LiveState = 'connecting';
  private failures = 0;
  private hadGap = false;
  private retryTimer: ReturnType<typeof setTimeout> | undefined;
  private hiddenTimer: ReturnType<typeof setTimeout> | undefined;
  private stale = new StaleNouns(() => {});
  private queries: QueryClient | undefined;
  private readonly listeners = new Set<() => void>();

  start(queries: QueryClient): () => void {
    this.queries = queries;
    this.stale = new StaleNouns((nouns) => {
      for (const noun of nouns) void queries.invalidateQueries({ queryKey: [noun] });
    });
    document.addEventListener('visibilitychange', this.onVisibility);
    this.open();
    return () => this.stop();
  }

  readonly subscribe = (listener: () => void) => {
    this.listeners.add(listener);
    return () => this.listeners.delete(listener);
  };

  readonly current = () => this.state;

  private stop() {
    document.removeEventListener('visibilitychange', this.onVisibility);
    clearTimeout(this.hiddenTimer);
    this.close();
    this.set('connecting');
    this.hadGap = false;
  }

  private close() {
    clearTimeout(this.retryTimer);
    this.source?.close();
    this.source = undefined;
  }

  private open() {
    this.close();
    const source = new EventSource('/api/live');
    this.source = source;
    source.onopen = () => this.onOpen();
    source.onerror = () => this.onError(source);
    source.onmessage = (event) => this.onEvent(event);
    source.addEventListener('resync', () => this.readAll());
  }

  private onOpen() {
    this.failures = 0;
    if (this.hadGap) this.readAll();
    this.hadGap = false;
    this.set('live');
  }

  private onError(source: EventSource) {
    this.hadGap = true;
    this.set('reconnecting');
    // The browser reconnects by itself unless the server answered with an error: then the source stays closed.
    if (source.readyState !== EventSource.CLOSED) return;
    this.failures += 1;
    const wait = Math.min(longestWaitMs, 1000 * 2 ** this.failures) * (0.5 + Math.random() / 2);
    clearTimeout(this.retryTimer);
    this.retryTimer = setTimeout(() => this.open(), wait);
  }

  private onEvent(event: MessageEvent<string>) {
    const { nouns } = JSON.parse(event.data) as { nouns: string[] };
    this.stale.add(nouns);
  }

  private readAll() {
    void this.queries?.invalidateQueries();
  }

  private readonly onVisibility = () => {
    clearTimeout(this.hiddenTimer);
    if (document.visibilityState === 'hidden') {
      this.hiddenTimer = setTimeout(() => {
        this.close();
        this.hadGap = true;
      }, hiddenPauseMs);
    } else if (!this.source) {
      this.set('reconnecting');
      this.open();
    }
  };

  private set(state: LiveState) {
    if (this.state === state) return;
    this.state = state;
    for (const listener of this.listeners) listener();
  }
}

export const live = new Live();

/** The state of the live connection, for the shell. */
export function useLiveState(): LiveState {
  return useSyncExternalStore(live.subscribe, live.current);
}
