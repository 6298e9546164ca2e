import { describe, expect, test } from '@jest/globals';
import fc from 'fast-check';
import { checkCharacterMod43, checkDigitGs1, encode, type Fields, labelDate, parse } from './index.ts';

const [GS, RS, EOT] = ['\u001d', '\u001e', '\u0004'];
const message = (...envelopes: string[]) => `[)>${RS}${envelopes.join(RS)}${RS}${EOT}`;
const gtin = '09506000134352';

describe('the worked examples', () => {
  test('encode and parse an ISO/IEC 15434 message', () => {
    const text = `[)>${RS}06${GS}1PQP-2204${GS}SA1234${RS}${EOT}`;
    expect(encode({ '1P': 'QP-2204', S: 'A1234' }, '15434-06')).toBe(text);
    expect(parse(text)).toEqual({ format: '15434-06', fields: { '1P': 'QP-2204', S: 'A1234' }, problems: [] });
  });
  test('encode a GS1 element string', () => {
    expect(encode({ '01': gtin, '10': 'LOT42', '21': 'A7' }, 'gs1')).toBe(`01${gtin}10LOT42${GS}21A7`);
  });
  test('check digit, check character, dates', () => {
    expect(checkDigitGs1('629104150021')).toBe('3');
    expect(checkCharacterMod43('123XYZ')).toBe('M');
    expect(labelDate({ identifier: '14D', value: '20271231' }, 2026)).toBe('2027-12-31');
    expect(labelDate({ identifier: '17', value: '280200' }, 2026)).toBe('2028-02-29');
  });
});

describe('what is printed can be read back', () => {
  const ascii = fc.string({ minLength: 1, maxLength: 30 });
  test('any fields in a 15434 message', () => {
    const fields = fc.dictionary(fc.constantFrom('P', '1P', 'S', '1T', 'K', 'W', '30P', '999X'), ascii, { minKeys: 1 });
    fc.assert(
      fc.property(fields, (values) => {
        const plain = { ...values };
        expect(parse(encode(plain, '15434-06'))).toEqual({ format: '15434-06', fields: plain, problems: [] });
      }),
    );
  });
  test('item, expiry, lot and serial in a GS1 element string, with and without its symbology identifier', () => {
    const allowed = fc.string({ unit: fc.constantFrom(...'AZaz09-/._%'), minLength: 1, maxLength: 20 });
    const item = fc.string({ unit: fc.constantFrom(...'0123456789'), minLength: 13, maxLength: 13 });
    const rest = fc.record(
      { '10': allowed, '17': fc.constantFrom('271231', '280200'), '21': allowed, '241': allowed },
      { requiredKeys: [] },
    );
    fc.assert(
      fc.property(item, rest, (digits, optional) => {
        const fields: Fields = { '01': digits + checkDigitGs1(digits), ...optional };
        const text = encode(fields, 'gs1');
        for (const scan of [text, `]d2${text}`, `]C1${text}\r\n`])
          expect(parse(scan)).toEqual({ format: 'gs1', fields, problems: [] });
      }),
    );
  });
  test('every scan whatever gives an answer', () => {
    const hostile = fc.string({
      unit: fc.constantFrom(...`[)>]d2C1EI0123456789PSTQ${GS}${RS}${EOT}\r\u00e4`),
      maxLength: 40,
    });
    fc.assert(
      fc.property(hostile, (scan) => {
        const { format, fields, problems } = parse(scan);
        expect(['15434-06', 'gs1', 'single', 'unknown']).toContain(format);
        if (format === 'single') expect(problems).toEqual([]);
        if (format === 'unknown') expect(problems.length).toBeGreaterThan(0);
        if (format === 'single') expect(fields.value).toBe(scan.replace(/[\r\n]+$/, ''));
      }),
      { numRuns: 1000 },
    );
  });
});

describe('check digits', () => {
  test('find every single wrong digit', () => {
    const digits = fc.string({ unit: fc.constantFrom(...'0123456789'), minLength: 1, maxLength: 17 });
    fc.assert(
      fc.property(digits, fc.nat(), fc.integer({ min: 1, max: 9 }), (right, pick, shift) => {
        const at = pick % right.length;
        const wrong = right.slice(0, at) + ((Number(right[at]) + shift) % 10) + right.slice(at + 1);
        expect(checkDigitGs1(wrong)).not.toBe(checkDigitGs1(right));
        expect(checkDigitGs1(`0${right}`)).toBe(checkDigitGs1(right));
      }),
    );
  });
  test.each(['', '12a', ' 12', '-1'])('%j has no check digit', (text) => {
    expect(() => checkDigitGs1(text)).toThrow(expect.objectContaining({ code: 'not-digits' }));
  });
  test.each(['', 'abc', 'A*B', 'Ä'])('%j is not Code 39', (text) => {
    expect(() => checkCharacterMod43(text)).toThrow(expect.objectContaining({ code: 'not-code-39' }));
  });
});

describe('ISO/IEC 15434 messages', () => {
  test('only the leading identifier is taken off, and leading zeros stay', () => {
    expect(parse(message(`06${GS}1T0425A${GS}P1P-77${GS}18S1AB23X9${GS}25SD1AB23X`)).fields).toEqual({
      '1T': '0425A',
      P: '1P-77',
      '18S': '1AB23X9',
      '25S': 'D1AB23X',
    });
  });
  test('an unknown identifier is kept', () => {
    expect(parse(message(`06${GS}77Xabc`))).toMatchObject({ fields: { '77X': 'abc' }, problems: [] });
  });
  test('a 05 and a 06 envelope are both read; 05 alone is GS1', () => {
    const both = parse(message(`05${GS}01${gtin}${GS}10LOT42`, `06${GS}SA1`));
    expect(both).toEqual({ format: '15434-06', fields: { '01': gtin, '10': 'LOT42', S: 'A1' }, problems: [] });
    expect(parse(message(`05${GS}01${gtin}`))).toMatchObject({ format: 'gs1', fields: { '01': gtin } });
  });
  test('a symbology identifier in front, and Enter behind, are taken off', () => {
    expect(parse(`]d1${message(`06${GS}SA1`)}\r\n`)).toEqual({ format: '15434-06', fields: { S: 'A1' }, problems: [] });
  });
  test('a missing trailer is tolerated and said', () => {
    const cut = parse(`[)>${RS}06${GS}SA1`);
    expect(cut).toMatchObject({ format: '15434-06', fields: { S: 'A1' } });
    expect(cut.problems).toHaveLength(2);
  });
  test.each([
    [`[)>06${GS}SA1${RS}${EOT}`, 'the separator after [)>'],
    [`[)>${RS}06SA1${RS}${EOT}`, 'the separator after format 06'],
    ['[)>06PQ-1SA1', 'the separator after [)>'],
    [message(`12${GS}SER A1`), 'format "12"'],
    [message(`05${GS}01${gtin.slice(0, 13)}`), '13 characters'],
  ])('%j is not read by guessing', (scan, reason) => {
    const { format, fields, problems } = parse(scan);
    expect([format, Object.keys(fields)]).toEqual(['unknown', ['value']]);
    expect(problems.join()).toContain(reason);
  });
  test.each([
    [`SA1${GS}SB2`, 'more than once'],
    ['Q12A', 'form'],
    ['14D31122027', 'form'],
    ['15D20271231', 'form'],
    ['25V1AO23', 'form'],
    ['sA1', 'no data identifier'],
    ['S', 'empty'],
  ])('the field %j is left out and named', (field, reason) => {
    const { fields, problems } = parse(message(`06${GS}PX-1${GS}${field}`));
    expect(fields).toEqual({ P: 'X-1' });
    expect(problems).toEqual([expect.stringContaining(reason)]);
  });
  test('9D is a date of agreed form and stays raw', () => {
    expect(parse(message(`06${GS}9D2026W07`)).fields).toEqual({ '9D': '2026W07' });
  });
});

describe('GS1 scans', () => {
  test('without the separator the lot swallows what follows; it is not split by guess', () => {
    expect(parse(`]d201${gtin}1727123110LOT4221A7`).fields).toEqual({ '01': gtin, '17': '271231', '10': 'LOT4221A7' });
  });
  test('a separator after a predefined length is tolerated', () => {
    expect(parse(`]d201${gtin}${GS}17271231`)).toMatchObject({ format: 'gs1', problems: [] });
  });
  test('a lot without its item is read and said', () => {
    expect(parse(']C110LOT42')).toEqual({
      format: 'gs1',
      fields: { '10': 'LOT42' },
      problems: ['(10) needs (01) or (02) beside it'],
    });
  });
  test.each([
    `]d201${gtin.slice(0, 13)}3`,
    `]d201${gtin.slice(0, 13)}`,
    `]d201${gtin}17271331`,
    `]d201${gtin}10${'A'.repeat(21)}`,
    `]d201${gtin}10A B`,
    `]d201${gtin}5501`,
    ']d2',
    ']E04006381333930',
  ])('%j is damaged', (scan) => {
    expect(parse(scan).format).toBe('unknown');
    expect(parse(scan).problems).toHaveLength(1);
  });
  test('retail and carton symbols are trade items', () => {
    expect(parse(']E04006381333931')).toEqual({ format: 'gs1', fields: { '01': '04006381333931' }, problems: [] });
    expect(parse(']I110614141000415').fields).toEqual({ '01': '10614141000415' });
    expect(parse(']E496385074').fields).toEqual({ '01': '00000096385074' });
  });
  test('with the scanner sending identifiers, plain Code 128 that looks like GS1 is not split', () => {
    expect(parse(`]C001${gtin}`, { symbologyIdentifiers: true })).toEqual({
      format: 'single',
      fields: { value: `01${gtin}` },
      problems: [],
    });
    expect(parse(']A0PN-1234', { symbologyIdentifiers: true }).fields.value).toBe('PN-1234');
  });
});

describe('plain scans', () => {
  test('the text as scanned, and the reading as identified data when it is one', () => {
    expect(parse('WO-26-0417').fields.value).toBe('WO-26-0417');
    expect(parse('S1234')).toEqual({ format: 'single', fields: { value: 'S1234', S: '1234' }, problems: [] });
    expect(parse('7V-103')).toEqual({ format: 'single', fields: { value: '7V-103' }, problems: [] });
    expect(parse('0109506000134353').fields).toEqual({ value: '0109506000134353' });
    expect(parse('10LOT42')).toMatchObject({ format: 'single' });
    expect(parse(']X-99')).toEqual({ format: 'single', fields: { value: ']X-99' }, problems: [] });
  });
  test.each(['', ' \r\n', `AB${GS}CD`])('%j is unknown', (scan) => {
    expect(parse(scan).format).toBe('unknown');
  });
  test('what is no text is refused', () => {
    expect(() => parse(12 as unknown as string)).toThrow(expect.objectContaining({ code: 'not-text' }));
  });
});

describe('what is not printed', () => {
  test.each<[Fields, '15434-06' | 'gs1', string]>([
    [{}, '15434-06', 'bad-label'],
    [{ S: '' }, '15434-06', 'bad-label-field'],
    [{ S: `A${GS}1` }, '15434-06', 'bad-label-field'],
    [{ S: `A${EOT}` }, '15434-06', 'bad-label-field'],
    [{ S: 'Ä1' }, '15434-06', 'bad-label-field'],
    [{ serial: 'A1' }, '15434-06', 'bad-label-field'],
    [{ Q: '1.5' }, '15434-06', 'bad-label-field'],
    [{ '14D': '20270229' }, '15434-06', 'bad-label-field'],
    [{ S: 1 as unknown as string }, '15434-06', 'bad-label-field'],
    [{ '01': gtin.slice(1) }, 'gs1', 'bad-label-field'],
    [{ '01': '09506000134353' }, 'gs1', 'bad-label-field'],
    [{ '01': gtin, '241': 'A B' }, 'gs1', 'bad-label-field'],
    [{ '01': gtin, '17': '270001' }, 'gs1', 'bad-label-field'],
    [{ '01': gtin, '55': 'X' }, 'gs1', 'bad-label-field'],
    [{ '10': 'LOT42' }, 'gs1', 'bad-label'],
    [{ '01': gtin, '37': '5' }, 'gs1', 'bad-label'],
    [{ '01': gtin, '250': 'A' }, 'gs1', 'bad-label'],
    [{ S: 'A' }, 'code39' as 'gs1', 'unknown-format'],
  ])('%j as %s: %s', (fields, format, code) => {
    expect(() => encode(fields, format)).toThrow(expect.objectContaining({ name: 'RuleError', code }));
  });
});

test.each([
  ['17', '27020', 2026],
  ['17', '270000', 2026],
  ['11', '270200', 2026],
  ['9D', '270228', 2026],
  ['17', '270228', 26],
])('(%s) %s in %i names no day', (identifier, value, year) => {
  expect(() => labelDate({ identifier, value }, year)).toThrow(expect.objectContaining({ code: 'not-a-label-date' }));
});
