import zxing from '@zxing/library';
import { getDocument, OPS } from 'pdfjs-dist/legacy/build/pdf.mjs';

const { BinaryBitmap, Code128Reader, GlobalHistogramBinarizer, RGBLuminanceSource } = zxing;

const pixelsPerPoint = 4;
const quietPixels = 60;
const rows = 20;

/** What a reader sees of every barcode in a PDF, page by page: its bars as they are drawn, read by an independent library. */
export async function readBarcodes(bytes: Uint8Array): Promise<string[]> {
  const task = getDocument({ data: new Uint8Array(bytes), useSystemFonts: false, verbosity: 0 });
  const pdf = await task.promise;
  const found: string[] = [];
  for (let number = 1; number <= pdf.numPages; number += 1) {
    const page = await pdf.getPage(number);
    const { fnArray, argsArray } = await page.getOperatorList();
    for (const [index, operation] of fnArray.entries()) {
      if (operation !== OPS.constructPath) continue;
      const bars = barsOf(argsArray[index]);
      // Rules of tables are paths too: a symbol has many bars.
      if (bars.length > 20) found.push(decoded(bars));
    }
  }
  await task.destroy();
  return found;
}

interface Bar {
  readonly from: number;
  readonly to: number;
}

/** The left and right edge of each rectangle of a filled path: numbers after 0 (move), 1 (line) and 4 (close). */
function barsOf(given: unknown): Bar[] {
  const [, [data]] = given as [number, [ArrayLike<number> | null]];
  const bars: Bar[] = [];
  let xs: number[] = [];
  const numbers = Array.from(data ?? []);
  for (let at = 0; at < numbers.length; ) {
    const kind = numbers[at];
    if (kind === 0 || kind === 1) {
      xs.push(numbers[at + 1] ?? 0);
      at += 3;
    } else if (kind === 4) {
      bars.push({ from: Math.min(...xs), to: Math.max(...xs) });
      xs = [];
      at += 1;
    } else return [];
  }
  return bars;
}

function decoded(bars: readonly Bar[]): string {
  const start = Math.min(...bars.map(({ from }) => from));
  const end = Math.max(...bars.map(({ to }) => to));
  const width = Math.round((end - start) * pixelsPerPoint) + 2 * quietPixels;
  const line = new Uint8ClampedArray(width).fill(255);
  const pixel = (x: number) => Math.round((x - start) * pixelsPerPoint) + quietPixels;
  for (const { from, to } of bars) line.fill(0, pixel(from), pixel(to));
  const picture = new Uint8ClampedArray(width * rows);
  for (let row = 0; row < rows; row += 1) picture.set(line, row * width);
  const source = new RGBLuminanceSource(picture, width, rows);
  return new Code128Reader().decode(new BinaryBitmap(new GlobalHistogramBinarizer(source))).getText();
}
