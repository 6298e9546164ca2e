/** Longest line in bytes, its end not counted. */
const longest = 1024;

/** Bytes as they come, into whole lines. A line that is too long is dropped to its end, however long that takes: memory stays bounded. */
export class LineSplitter {
  private rest: Buffer = Buffer.alloc(0);
  private isDropping = false;

  /** Lines ended by these bytes, in order; null for one that was too long. */
  push(bytes: Buffer): (string | null)[] {
    const lines: (string | null)[] = [];
    let from = 0;
    for (let end = bytes.indexOf(10); end >= 0; end = bytes.indexOf(10, from)) {
      lines.push(this.take(bytes.subarray(from, end)));
      from = end + 1;
    }
    this.keep(bytes.subarray(from));
    return lines;
  }

  private take(part: Buffer): string | null {
    const line = Buffer.concat([this.rest, part]);
    const isTooLong = this.isDropping || line.length > longest;
    this.rest = Buffer.alloc(0);
    this.isDropping = false;
    return isTooLong ? null : line.toString('utf8').replace(/\r$/, '');
  }

  private keep(part: Buffer): void {
    if (this.isDropping) return;
    this.isDropping = this.rest.length + part.length > longest;
    // A copy: a slice would hold the whole chunk it was cut from.
    this.rest = this.isDropping ? Buffer.alloc(0) : Buffer.concat([this.rest, part]);
  }
}
