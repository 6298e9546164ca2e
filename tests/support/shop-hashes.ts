import { tableHashes } from './refused.ts';

/** What counts tries at secrets, and what the server's own jobs write by the clock, whoever asks for what. */
const beside = new Set(['sign_in_attempts', 'anchors', 'anchored_heads', 'shop_keys']);

/** Hashes of the tables that only commands write: for tests that send very many requests over minutes. */
export async function shopHashes(databaseUrl: string): Promise<Record<string, string>> {
  const hashes = await tableHashes(databaseUrl);
  return Object.fromEntries(Object.entries(hashes).filter(([name]) => !beside.has(name)));
}
