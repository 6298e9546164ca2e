import { formatDate } from './dates.ts';

/** Calendar dates inside a sentence of the server, as they read everywhere else: `needed 2026-12-04` → `needed 4 Dec 2026`. */
export function plainDates(sentence: string): string {
  return sentence.replace(/\b\d{4}-\d{2}-\d{2}\b/g, formatDate);
}
