/**
 * Places in a fixed order, each with a value; finds the first place at or after a start whose value reaches a minimum,
 * in logarithmic time. `cover` keeps lots in serving order with their expiry as the value, so that skipping the empty
 * and the too-short-lived never becomes a scan.
 */
export class FirstFit {
  private readonly leaves: number;
  private readonly highest: Int32Array;

  constructor(places: number) {
    this.leaves = 2 ** Math.ceil(Math.log2(Math.max(places, 1)));
    this.highest = new Int32Array(2 * this.leaves);
  }

  /** A value of 0 closes the place: no search asks for less than 1. */
  set(place: number, value: number): void {
    let node = this.leaves + place;
    this.highest[node] = value;
    for (node >>= 1; node >= 1; node >>= 1) {
      this.highest[node] = Math.max(this.highest[2 * node]!, this.highest[2 * node + 1]!);
    }
  }

  /** The first place ≥ `from` with a value ≥ `minimum`, or −1. */
  find(from: number, minimum: number): number {
    if (from >= this.leaves) return -1;
    let node = this.leaves + from;
    while (this.highest[node]! < minimum) {
      // Climb while we are a right child: everything to the left of here has been looked at.
      while (node % 2 === 1) node >>= 1;
      if (node === 0) return -1;
      node += 1;
    }
    while (node < this.leaves) {
      node *= 2;
      if (this.highest[node]! < minimum) node += 1;
    }
    return node - this.leaves;
  }
}
