import PDFDocument from 'pdfkit';
import { code128 } from './code-128.ts';
import { collect, printable } from './pdf.ts';

/** One column of a table: its head, its share of the width (a number of points, or `*` for what is left) and its side. */
export interface Column {
  readonly head: string;
  readonly width: number | '*';
  readonly side?: 'left' | 'right';
}

export interface PaperOptions {
  readonly title: string;
  /** Who issues it; stands above the title. */
  readonly shopName: string;
  /** The only date in the file, so that the same content gives the same bytes. */
  readonly at: Date;
  /** A line at the foot of every page. */
  readonly foot: string;
}

const left = 54;
const barHeight = 24;
/** Of one module, in points: 0.26 mm, what a hand scanner reads at arm's length; common practice, no source. */
const moduleWidth = 0.75;
const grey = '#4a4f55';
const rule = '#b9bec4';

/**
 * A printed paper in the shop's plain layout: A4, tagged for reading aloud, the same bytes for the same content.
 * Text is limited to what the PDF standard fonts can show (Windows-1252); other letters print as a question mark.
 */
export class Paper {
  private readonly pdf: PDFKit.PDFDocument;
  private readonly body: PDFKit.PDFStructureElement;
  private readonly done: Promise<Buffer>;

  constructor(private readonly options: PaperOptions) {
    const { title, shopName, at } = options;
    this.pdf = new PDFDocument({
      ...{ size: 'A4', pdfVersion: '1.7', tagged: true, lang: 'en', displayTitle: true, bufferPages: true },
      margins: { top: 54, bottom: 72, left, right: left },
      info: { Title: title, Author: shopName, Creator: 'Hubwright', CreationDate: at, ModDate: at },
    });
    this.done = collect(this.pdf);
    this.body = this.pdf.struct('Document');
    this.pdf.addStructure(this.body);
    this.text('P', shopName, { font: 'Helvetica-Bold', size: 11, color: grey });
    this.text('H1', title, { font: 'Helvetica-Bold', size: 20 });
    this.pdf.moveDown(0.4);
  }

  heading(text: string): this {
    this.pdf.moveDown(0.6);
    this.text('H2', text, { font: 'Helvetica-Bold', size: 12 });
    this.pdf.moveDown(0.2);
    return this;
  }

  /** Another sheet of the same paper, under a title and with a barcode of its own. */
  sheet(title: string, code: string): this {
    this.pdf.addPage();
    this.text('H1', title, { font: 'Helvetica-Bold', size: 20 });
    this.pdf.moveDown(0.4);
    return this.barcode(code);
  }

  /** A code to scan, under what was written last, with the same in letters beneath it. */
  barcode(code: string): this {
    this.bars(code, left);
    return this;
  }

  /** A heading with a code to scan at its right; both stay on one page with what comes next. */
  codedHeading(text: string, code: string): this {
    const { pdf } = this;
    pdf.moveDown(0.6);
    if (pdf.y > pdf.page.height - pdf.page.margins.bottom - 110) pdf.addPage();
    const top = pdf.y;
    const width = widthOf(code);
    this.text('H2', text, { font: 'Helvetica-Bold', size: 12, width: pdf.page.width - 2 * left - width - 18 });
    const below = pdf.y;
    pdf.y = top;
    this.bars(code, pdf.page.width - left - width);
    pdf.y = Math.max(below, top + barHeight + 14);
    return this;
  }

  paragraph(text: string): this {
    this.text('P', text, { font: 'Helvetica', size: 10 });
    this.pdf.moveDown(0.4);
    return this;
  }

  /** Name and value, one under the other; empty values are left out. */
  facts(pairs: readonly (readonly [name: string, value: string])[]): this {
    const shown = pairs.filter(([, value]) => value !== '');
    return this.grid(
      [130, '*'],
      shown.map(([name, value]) => [
        { text: printable(name), type: 'TH' as const, textColor: grey },
        { text: printable(value) },
      ]),
      { border: 0, padding: 2 },
    );
  }

  table(columns: readonly Column[], rows: readonly (readonly string[])[]): this {
    const cell = (text: string, column: Column | undefined) => ({
      text: printable(text),
      align: { x: column?.side ?? ('left' as const), y: 'top' as const },
    });
    const head = columns.map((column) => ({
      ...cell(column.head, column),
      ...{ type: 'TH' as const, font: { src: 'Helvetica-Bold', size: 9 } },
    }));
    const body = rows.map((row) => row.map((text, index) => cell(text, columns[index])));
    return this.grid(
      columns.map((column) => column.width),
      [head, ...body],
      { border: [0, 0, 0.5, 0], padding: 4 },
    );
  }

  /** The finished bytes. Nothing can be added afterwards. */
  async finish(): Promise<Buffer> {
    this.body.end();
    const { start, count } = this.pdf.bufferedPageRange();
    for (let page = start; page < start + count; page++) {
      this.pdf.switchToPage(page);
      this.foot(page - start + 1, count);
    }
    this.pdf.end();
    return this.done;
  }

  private grid(
    widths: readonly (number | '*')[],
    data: PDFKit.Mixins.CellOptions[][],
    lines: { border: number | [number, number, number, number]; padding: number },
  ): this {
    if (data.length === 0) return this;
    this.pdf.font('Helvetica').fontSize(9.5).fillColor('black');
    this.pdf.table({
      data,
      columnStyles: [...widths],
      defaultStyle: { border: lines.border as never, borderColor: rule as never, padding: lines.padding },
      structParent: this.body,
    } as PDFKit.Mixins.TableOptionsWithData);
    this.pdf.x = left;
    this.pdf.moveDown(0.5);
    return this;
  }

  private bars(code: string, x: number): void {
    const { pdf } = this;
    const y = pdf.y;
    const figure = pdf.struct('Figure', { alt: `Barcode ${code}` }, () => {
      pdf.fillColor('black');
      for (const bar of code128(code)) pdf.rect(x + bar.x * moduleWidth, y, bar.width * moduleWidth, barHeight);
      pdf.fill();
      pdf
        .font('Helvetica')
        .fontSize(7)
        .text(code, x, y + barHeight + 2, { lineBreak: false });
    });
    this.body.add(figure);
    pdf.x = left;
    pdf.y = y + barHeight + 16;
  }

  private text(
    kind: 'P' | 'H1' | 'H2',
    text: string,
    look: { font: string; size: number; color?: string; width?: number },
  ): void {
    const { pdf } = this;
    this.body.add(
      pdf.struct(kind, {}, () => {
        pdf
          .font(look.font)
          .fontSize(look.size)
          .fillColor(look.color ?? 'black')
          .text(printable(text), left, undefined, look.width === undefined ? {} : { width: look.width });
      }),
    );
  }

  // Feet are no part of what is read aloud.
  private foot(page: number, of: number): void {
    const { pdf } = this;
    const bottom = pdf.page.margins.bottom;
    pdf.page.margins.bottom = 0;
    pdf.markContent('Artifact', { type: 'Pagination' });
    pdf.font('Helvetica').fontSize(8).fillColor(grey);
    pdf.text(printable(`${this.options.foot}   ·   Page ${page} of ${of}`), left, pdf.page.height - 44, {
      width: pdf.page.width - 2 * left,
      lineBreak: false,
    });
    pdf.endMarkedContent();
    pdf.page.margins.bottom = bottom;
  }
}

function widthOf(code: string): number {
  const last = code128(code).at(-1);
  return last ? (last.x + last.width) * moduleWidth : 0;
}
