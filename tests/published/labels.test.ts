import { checkCharacterMod43, checkDigitGs1, encode, labelDate, parse } from '@hubwright/rules/labels';
import { describe, expect, test } from '@jest/globals';

const GS = '\u001d';
const hex = (text: string) =>
  [...text].map((character) => character.charCodeAt(0).toString(16).padStart(2, '0')).join('');

// GS1, "How to calculate a check digit manually" and the example keys of the GS1 General Specifications.
test.each([
  ['629104150021', '3'],
  ['400638133393', '1'],
  ['0950600013435', '2'],
  ['0950110153000', '3'],
  ['1061414100041', '5'],
  ['0061414100001', '2'],
  ['03600029145', '2'],
  ['9638507', '4'],
  ['37610425002123456', '9'],
])('GS1: %s takes the check digit %s', (digits, check) => {
  expect(checkDigitGs1(digits)).toBe(check);
});

// Code 39 modulo 43, ISO/IEC 16388 Annex A; 123XYZ → M is the example printed in several reader manuals, the others were summed by hand.
test.each([
  ['123XYZ', 'M'],
  ['CODE39', 'W'],
  ['CODE 39', 'R'],
  ['HELLO', 'B'],
  ['12345ABCDE/', 'T'],
  ['WIKIPEDIA', '$'],
  ['159AZ', 'H'],
])('Code 39: %s takes the check character %s', (text, check) => {
  expect(checkCharacterMod43(text)).toBe(check);
});

describe('ISO/IEC 15434', () => {
  // Header [)> RS, format indicator and GS, fields parted by GS, RS, EOT. The bytes were written out by hand from that rule.
  test.each([
    [
      { '1P': 'QP-2204', S: 'A1234', Q: '1', '14D': '20271231' },
      '5b293e1e30361d315051502d323230341d5341313233341d51311d31344432303237313233311e04',
    ],
    [
      { '12V': '012345678', '1P': 'VX-31-1', S: 'FX0917', Q: '2', '4L': 'US' },
      '5b293e1e30361d3132563031323334353637381d315056582d33312d311d534658303931371d51321d344c55531e04',
    ],
  ])('format 06 of %j, byte for byte', (fields, bytes) => {
    expect(hex(encode(fields, '15434-06'))).toBe(bytes);
    expect(parse(encode(fields, '15434-06'))).toEqual({ format: '15434-06', fields, problems: [] });
  });

  test('format 05 with a separator after every field', () => {
    const bytes = '5b293e1e30351d303130393530363030303133343335321d31373237313233311d31304c4f5434321d323141371e04';
    const text = (bytes.match(/../g) ?? []).map((pair) => String.fromCharCode(Number.parseInt(pair, 16))).join('');
    const fields = { '01': '09506000134352', '17': '271231', '10': 'LOT42', '21': 'A7' };
    expect(parse(text)).toEqual({ format: 'gs1', fields, problems: [] });
  });
});

describe('GS1 element strings', () => {
  // GS1 General Specifications, element strings: predefined lengths without, all others with a separator unless last.
  test('item, expiry, lot, serial', () => {
    const fields = { '01': '09501101530003', '17': '281200', '10': 'AB-123', '21': 'S1' };
    const text = `010950110153000317281200${'10AB-123'}${GS}21S1`;
    expect(encode(fields, 'gs1')).toBe(text);
    expect(parse(`]d2${text}`)).toEqual({ format: 'gs1', fields, problems: [] });
    expect(labelDate({ identifier: '17', value: '281200' }, 2026)).toBe('2028-12-31');
  });
  test('a fixed length that is not predefined (422) is closed by a separator', () => {
    expect(encode({ '01': '09501101530003', '422': '840', '10': 'A' }, 'gs1')).toBe(`010950110153000310A${GS}422840`);
    expect(parse(`]C10109501101530003422840${GS}10A`).fields).toEqual({
      '01': '09501101530003',
      '422': '840',
      '10': 'A',
    });
  });

  // Day 00 is the last day of the month, leap years included: AI 17, GS1 General Specifications.
  test.each([
    ['130200', 2013, '2013-02-28'],
    ['160200', 2016, '2016-02-29'],
    ['280200', 2026, '2028-02-29'],
    ['261100', 2026, '2026-11-30'],
  ])('expiry %s read in %i is %s', (value, year, date) => {
    expect(labelDate({ identifier: '17', value }, year)).toBe(date);
  });

  // Century: 49 years back to 50 ahead. GS1 General Specifications, "Determination of century in dates".
  test.each([
    ['76', 2026, '2076'],
    ['77', 2026, '1977'],
    ['99', 2026, '1999'],
    ['00', 2026, '2000'],
    ['01', 2051, '2101'],
    ['02', 2051, '2002'],
  ])('year %s read in %i is %s', (two, current, year) => {
    expect(labelDate({ identifier: '17', value: `${two}0615` }, current)).toBe(`${year}-06-15`);
  });
});

// ANSI MH10.8.2: 14D is YYYYMMDD, 15D is DDMMYYYY.
test('the two ways to print an expiry name the same day', () => {
  expect(labelDate({ identifier: '15D', value: '31122027' }, 2026)).toBe('2027-12-31');
  expect(labelDate({ identifier: '14D', value: '20271231' }, 2026)).toBe('2027-12-31');
});
