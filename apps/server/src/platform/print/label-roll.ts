import PDFDocument from 'pdfkit';
import { code128 } from './code-128.ts';
import { collect, printable } from './pdf.ts';

export interface RollLabel {
  /** What a scanner reads. */
  readonly code: string;
  /** The line one reads from afar. */
  readonly head: string;
  /** More, the most important first; what does not fit is left out. Empty ones are. */
  readonly lines: readonly string[];
}

export interface RollOptions {
  readonly title: string;
  readonly author: string;
  readonly at: Date;
  readonly widthMillimetres: number;
  readonly heightMillimetres: number;
}

/** An inch is 25.4 mm; PDF counts 72 points to it (ISO 32000-1, 8.3.2.3). */
const points = (millimetres: number) => (millimetres * 72) / 25.4;
/** Ten modules of white on either side: ISO/IEC 15417; the clause is not cited, since the number is from memory. */
const quietModules = 10;
/** As on the sheets; a narrow label makes its bars narrower, down to 0.19 mm, the least for general use; from memory, not looked up. */
const widest = 0.75;
const narrowest = 0.54;

/** Labels for a roll: one a page, the page as large as the label, a code over its letters and the facts under it. */
export async function labelRoll(options: RollOptions, labels: readonly RollLabel[]): Promise<Buffer> {
  const { title, author, at } = options;
  const size: [number, number] = [points(options.widthMillimetres), points(options.heightMillimetres)];
  const pdf = new PDFDocument({
    ...{ size, margin: 0, autoFirstPage: false, pdfVersion: '1.7', tagged: true, lang: 'en', displayTitle: true },
    info: { Title: title, Author: author, Creator: 'Hubwright', CreationDate: at, ModDate: at },
  });
  const done = collect(pdf);
  const body = pdf.struct('Document');
  pdf.addStructure(body);
  for (const label of labels) {
    pdf.addPage();
    body.add(drawn(pdf, label, size));
  }
  body.end();
  pdf.end();
  return done;
}

function drawn(pdf: PDFKit.PDFDocument, label: RollLabel, [width, height]: [number, number]) {
  const bars = code128(label.code);
  const modules = (bars.at(-1)?.x ?? 0) + (bars.at(-1)?.width ?? 0);
  const module = Math.min(widest, width / (modules + 2 * quietModules));
  if (module < narrowest) throw new Error(`${label.code} is too long for a label ${Math.round(width)} points wide`);
  const x = quietModules * module;
  const barHeight = Math.max(20, height * 0.32);
  const section = pdf.struct('Sect');
  section.add(
    pdf.struct('Figure', { alt: `Barcode ${label.code}` }, () => {
      pdf.fillColor('black');
      for (const bar of bars) pdf.rect(x + bar.x * module, 5, bar.width * module, barHeight);
      pdf.fill();
    }),
  );
  const scale = height / points(29);
  let y = 5 + barHeight + 2;
  const lines = [label.code, label.head, ...label.lines.filter((line) => line !== '')];
  for (const [place, line] of lines.entries()) {
    const letters = (place === 1 ? 9 : 6.5) * Math.min(scale, 1.5);
    if (y + letters > height - 2) break;
    section.add(
      pdf.struct('P', {}, () => {
        pdf.font(place === 1 ? 'Helvetica-Bold' : 'Helvetica').fontSize(letters);
        pdf.text(printable(line), x, y, { width: width - 2 * x, height: letters * 1.2, ellipsis: true });
      }),
    );
    y += letters * 1.2;
  }
  section.end();
  return section;
}
