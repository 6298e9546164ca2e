/** The bytes of a document once it has ended. */
export function collect(pdf: PDFKit.PDFDocument): Promise<Buffer> {
  const chunks: Buffer[] = [];
  return new Promise((resolve, reject) => {
    pdf.on('data', (chunk: Buffer) => chunks.push(chunk));
    pdf.on('end', () => resolve(Buffer.concat(chunks)));
    pdf.on('error', reject);
  });
}

// The letters of Windows-1252 beyond Latin-1: what the standard fonts can show.
const beyondLatin1 = '€‚ƒ„…†‡ˆ‰Š‹ŒŽ‘’“”•–—˜™š›œžŸ';

/** Letters that the fonts lack print as question marks. */
export function printable(text: string): string {
  return [...text].map((letter) => (letter <= '\u00ff' || beyondLatin1.includes(letter) ? letter : '?')).join('');
}
