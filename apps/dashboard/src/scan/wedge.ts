/** Longest pause between two keys of one scan. A barcode wedge types far faster than a hand (measured by no source: from experience). */
const longestGapMs = 50;
const shortestCode = 3;

/**
 * Tells a barcode wedge from a person by rhythm: a run of printable keys, each close behind the last, ended by Enter or Tab.
 *
 * Feed every key press with its time; the code is returned when the run ends as a scan.
 */
export class WedgeReader {
  private text = '';
  private lastAt = Number.NEGATIVE_INFINITY;

  /** @param key `KeyboardEvent.key` · @param atMs when it was pressed, in milliseconds of any one clock */
  press(key: string, atMs: number): string | undefined {
    const isLate = atMs - this.lastAt > longestGapMs;
    if (isLate) this.text = '';
    if (key === 'Enter' || key === 'Tab') {
      const code = this.text.trim();
      this.text = '';
      return code.length >= shortestCode ? code : undefined;
    }
    // Shift and other modifiers come between the characters of one scan: they keep the run alive.
    this.lastAt = atMs;
    if (key.length === 1) this.text += key;
    return undefined;
  }

  /** Whether a run is under way that may still become a scan: single-key shortcuts wait for this to be false. */
  isRunning(): boolean {
    return this.text.length > 1;
  }
}
