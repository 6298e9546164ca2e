import { createHash } from 'node:crypto';
import { getDocument } from 'pdfjs-dist/legacy/build/pdf.mjs';

/** What a reader finds in a PDF: its text, its title, and the roles of its tags. */
export interface ReadPdf {
  readonly hash: string;
  readonly pages: number;
  readonly title: string;
  readonly marked: boolean;
  readonly text: string;
  readonly roles: readonly string[];
}

interface Tag {
  readonly role?: string;
  readonly children?: readonly Tag[];
}

/** Reads back what was printed, with an independent PDF library. */
export async function readPdf(bytes: Uint8Array): Promise<ReadPdf> {
  const hash = createHash('sha256').update(bytes).digest('hex');
  const task = getDocument({ data: new Uint8Array(bytes), useSystemFonts: false, verbosity: 0 });
  const pdf = await task.promise;
  const [info, mark] = [await pdf.getMetadata(), await pdf.getMarkInfo()];
  const texts: string[] = [];
  const roles = new Set<string>();
  for (let number = 1; number <= pdf.numPages; number++) {
    const page = await pdf.getPage(number);
    const content = await page.getTextContent();
    texts.push(content.items.map((item) => ('str' in item ? item.str : '')).join(' '));
    collectRoles((await page.getStructTree()) as Tag | null, roles);
  }
  await task.destroy();
  const title = (info.info as { Title?: string }).Title ?? '';
  const text = texts.join(' ').replaceAll(/\s+/g, ' ');
  return { hash, pages: pdf.numPages, title, marked: mark?.Marked === true, text, roles: [...roles] };
}

function collectRoles(tag: Tag | null, roles: Set<string>): void {
  if (!tag) return;
  if (tag.role) roles.add(tag.role);
  for (const child of tag.children ?? []) collectRoles(child, roles);
}
