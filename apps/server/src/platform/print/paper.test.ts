import { describe, expect, it } from '@jest/globals';
import { readPdf } from '../../../../../tests/support/read-pdf.ts';
import { Paper } from './paper.ts';

const options = {
  title: 'Paper of a test',
  shopName: 'Tansy Hollow Airscrew Works',
  at: new Date('2026-11-25T15:00:00.000Z'),
  foot: 'Demonstration data, not for use on aircraft.',
};

function printed(rows: number, title = options.title): Promise<Buffer> {
  const lines = Array.from({ length: rows }, (_, index) => [String(index + 1), `line number ${index + 1}`]);
  return new Paper({ ...options, title })
    .facts([
      ['Customer', 'Brackenmoor Air Charter'],
      ['Left out', ''],
    ])
    .heading('Lines')
    .table(
      [
        { head: 'Item', width: 40 },
        { head: 'Description', width: '*' },
      ],
      lines,
    )
    .finish();
}

describe('a printed paper', () => {
  it('is the same bytes for the same content and moment, and other bytes for other content', async () => {
    const [one, same, other] = [await printed(3), await printed(3), await printed(4)];
    expect(one.equals(same)).toBe(true);
    expect(one.equals(other)).toBe(false);
  });

  it('runs over pages, each with its foot, and loses no line', async () => {
    const pdf = await readPdf(await printed(120));
    expect(pdf.pages).toBeGreaterThan(2);
    for (let page = 1; page <= pdf.pages; page++) expect(pdf.text).toContain(`Page ${page} of ${pdf.pages}`);
    for (let line = 1; line <= 120; line++) expect(pdf.text).toContain(`line number ${line} `);
    expect(pdf.text).not.toContain('Left out');
  });

  it('is tagged, so that a screen reader finds title, heading and table', async () => {
    const pdf = await readPdf(await printed(2));
    expect([pdf.marked, pdf.title]).toEqual([true, options.title]);
    expect(pdf.roles).toEqual(expect.arrayContaining(['Document', 'H1', 'H2', 'Table', 'TR', 'TH', 'TD']));
  });

  it('prints what the standard fonts have, and a question mark for the rest instead of nothing', async () => {
    const pdf = await readPdf(await printed(1, 'Señor Müller — 5 € ± 0.2 “Łódź”'));
    expect(pdf.text).toContain('Señor Müller — 5 € ± 0.2 “?ód?”');
  });
});
