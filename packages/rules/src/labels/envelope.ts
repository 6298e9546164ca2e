import { RuleError } from '../errors/index.ts';
import { faultOf, isIdentifier, splitIdentifier } from './data-identifiers.ts';
import { parseElements } from './elements.ts';
import { collect, EOT, type Fields, GS, RS, type Scan } from './shapes.ts';

const HEADER = '[)>';
type Part = { format: '05' | '06' | undefined; fields: Fields; problems: string[] };

/** ISO/IEC 15434, format 06, byte for byte: [)> RS 06 GS field (GS field)* RS EOT. */
export function encodeEnvelope(fields: Fields): string {
  const texts = Object.entries(fields).map(([identifier, value]) => {
    if (!isIdentifier(identifier))
      throw new RuleError('bad-label-field', `"${identifier}" is no data identifier.`, `fields.${identifier}`);
    const fault = faultOf(identifier, value);
    if (fault !== undefined) throw new RuleError('bad-label-field', `${fault}.`, `fields.${identifier}`);
    return `${GS}${identifier}${value}`;
  });
  return `${HEADER}${RS}06${texts.join('')}${RS}${EOT}`;
}

export function startsEnvelope(text: string): boolean {
  return text.startsWith(HEADER);
}

/** Reads every envelope of a message. A missing trailer is tolerated and said; a missing separator is not repaired. */
export function parseEnvelopes(text: string): Scan {
  if (!text.startsWith(HEADER + RS))
    return damaged(text, 'the separator after [)> is missing: the reader drops or changes control characters');
  const problems: string[] = [];
  let body = text.slice(HEADER.length + 1);
  if (body.endsWith(EOT)) body = body.slice(0, -1);
  else problems.push('the end of the message (EOT) is missing');
  if (body.endsWith(RS)) body = body.slice(0, -1);
  else problems.push('the end of the last envelope (RS) is missing');
  const parts = body.split(RS).map(parseEnvelope);
  const formats = parts.map((part) => part.format);
  const format = formats.includes('06') ? '15434-06' : formats.includes('05') ? 'gs1' : 'unknown';
  const found = parts.flatMap((part) => Object.entries(part.fields));
  const { fields, problems: doubled } = collect(found.map(([identifier, value]) => ({ identifier, value })));
  const all = [...problems, ...parts.flatMap((part) => part.problems), ...doubled];
  return format === 'unknown' ? { format, fields: { value: text }, problems: all } : { format, fields, problems: all };
}

function parseEnvelope(envelope: string): Part {
  const format = envelope.slice(0, 2);
  if (format !== '05' && format !== '06')
    return { format: undefined, fields: {}, problems: [`an envelope of format "${format}" is not read`] };
  if (envelope.charAt(2) !== GS)
    return { format: undefined, fields: {}, problems: [`the separator after format ${format} is missing`] };
  const content = envelope.slice(3);
  if (format === '06') return { format, ...parseFields(content.split(GS)) };
  const { fields, problems, damaged: broken } = parseElements(content);
  return { format: broken ? undefined : format, fields, problems };
}

function parseFields(texts: string[]): { fields: Fields; problems: string[] } {
  const faults: string[] = [];
  const found = texts.flatMap((text) => {
    const field = splitIdentifier(text);
    const fault = field === undefined ? `"${text}" has no data identifier` : faultOf(field.identifier, field.value);
    if (fault !== undefined) faults.push(fault);
    return field === undefined || fault !== undefined ? [] : [field];
  });
  const { fields, problems } = collect(found);
  return { fields, problems: [...faults, ...problems] };
}

function damaged(text: string, problem: string): Scan {
  return { format: 'unknown', fields: { value: text }, problems: [problem] };
}
