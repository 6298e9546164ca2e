import { readFile } from 'node:fs/promises';
import { inflateSync } from 'node:zlib';
import { Problem } from '@hubwright/contracts/problems';

/** Names (ISO 32000-2, 7.3.5) of what acts by itself, hides other files, or cannot be read by everyone. */
const refusedNames: readonly (readonly [name: string, why: string])[] = [
  ['Encrypt', 'it is protected by a password or by rights'],
  ['JavaScript', 'it holds a script'],
  ['Rendition', 'it holds a script or plays media'],
  ['Launch', 'it starts another program'],
  ['SubmitForm', 'it sends data away'],
  ['ImportData', 'it reads data from elsewhere'],
  ['XFA', 'it is a form that runs by itself'],
  ['RichMedia', 'it holds another program'],
  ['EmbeddedFiles?', 'it holds other files'],
];
const inflatedLimit = 32 * 1024 * 1024;

/**
 * Whether a PDF is whole and only shows something: header and end (ISO 32000-2, 7.5), a cross-reference where it says, nothing
 * that acts. Objects packed into streams (7.5.7) are unpacked and looked at too. This is no proof against a made-up reader's
 * faults, so a PDF is only ever handed out as a download.
 * @throws `pdf-refused`
 */
export async function checkPdf(path: string): Promise<void> {
  const text = await readFile(path, 'latin1');
  const end = /startxref\s+(\d+)\s+%%EOF\s*$/.exec(text.slice(-2_048));
  if (!end) throw refused('it is cut short, or something was added after its end');
  const reference = text.slice(Number(end[1]), Number(end[1]) + 40);
  if (!/^\s*(xref\b|\d+\s+\d+\s+obj\b)/.test(reference)) throw refused('its table of contents is not where it says');
  refuseNames(text);
  let room = inflatedLimit;
  for (const packed of packedObjects(text)) {
    const unpacked = unpack(packed, room);
    room -= unpacked.length;
    refuseNames(unpacked);
  }
}

/** A name may be written with any of its letters as `#` and two digits (7.3.5). */
function refuseNames(text: string): void {
  const plain = text.replaceAll(/#([0-9a-fA-F]{2})/g, (_, hex: string) =>
    String.fromCharCode(Number.parseInt(hex, 16)),
  );
  for (const [name, why] of refusedNames) if (new RegExp(`/${name}(?![A-Za-z])`).test(plain)) throw refused(why);
}

/** Text from the first byte of each stream that holds objects. */
function* packedObjects(text: string): Generator<{ dictionary: string; body: string }> {
  for (const { index, 0: word } of text.matchAll(/\bstream\r?\n/g)) {
    const before = text.slice(Math.max(0, index - 4_096), index);
    const dictionary = before
      .slice(before.lastIndexOf('obj') + 3)
      .replaceAll('#4f', 'O')
      .replaceAll('#4F', 'O');
    if (!/ObjStm|#/.test(dictionary)) continue;
    const close = text.indexOf('endstream', index);
    yield { dictionary, body: text.slice(index + word.length, close < 0 ? undefined : close) };
  }
}

function unpack({ dictionary, body }: { dictionary: string; body: string }, room: number): string {
  if (!/\/Filter/.test(dictionary)) return body;
  if (!/\/Filter\s*\[?\s*\/FlateDecode\s*(\]|\/|>>)/.test(dictionary) || /DecodeParms/.test(dictionary))
    throw refused('its objects are packed in a way that cannot be looked into');
  try {
    return inflateSync(Buffer.from(body, 'latin1'), { maxOutputLength: Math.max(room, 1) }).toString('latin1');
  } catch {
    throw refused('its objects cannot be unpacked');
  }
}

function refused(why: string): Problem {
  return new Problem('pdf-refused', `The PDF is not kept: ${why}`);
}
