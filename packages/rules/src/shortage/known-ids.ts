/**
 * Finds an id used twice. An open-addressed table of row numbers: unlike a Set of 800,000 texts it asks nothing of the
 * garbage collector, which would otherwise take longer than the rule.
 */
export class KnownIds {
  private readonly rows: Int32Array;
  private readonly ids: string[] = [];

  constructor(capacity: number) {
    this.rows = new Int32Array(2 ** Math.ceil(Math.log2(2 * capacity + 2)));
  }

  /** False when the id is known already. */
  add(id: string): boolean {
    const mask = this.rows.length - 1;
    let slot = hashOf(id) & mask;
    for (; this.rows[slot] !== 0; slot = (slot + 1) & mask) if (this.ids[this.rows[slot]! - 1] === id) return false;
    this.rows[slot] = this.ids.push(id);
    return true;
  }
}

/** FNV-1a, 32 bits, as published by its authors (Fowler, Noll, Vo). */
function hashOf(text: string): number {
  let hash = 0x811c9dc5;
  for (let i = 0; i < text.length; i += 1) hash = Math.imul(hash ^ text.charCodeAt(i), 0x01000193);
  return (hash ^ (hash >>> 15)) >>> 0;
}
