import { csvField, csvText } from '@hubwright/rules/csv';
import { describe, expect, it } from '@jest/globals';
import { fieldErrors, fieldName } from './field-errors.ts';

describe('CSV', () => {
  it('doubles quotes and quotes what holds a comma, a quote or a line break (RFC 4180 §2, rules 6 and 7)', () => {
    expect(csvField('a,b')).toBe('"a,b"');
    expect(csvField('3/8" bolt')).toBe('"3/8"" bolt"');
    expect(csvField('a\nb')).toBe('"a\nb"');
  });

  it('disarms text a spreadsheet would run (OWASP, CSV Injection), but leaves numbers numbers', () => {
    expect(csvField('=HYPERLINK("x")')).toBe('"\'=HYPERLINK(""x"")"');
    for (const text of ['+1', '-1', '@a', '\ta', '\u0000=1', '  =1', '＝1', '＋1', '－8AN', '＠a', '-8AN'])
      expect(csvField(text)).toBe(`'${text}`);
    expect(csvField('\r=1')).toBe('"\'\r=1"');
    expect(csvField('\n=1')).toBe('"\'\n=1"');
    for (const text of ['1E5', '00123', '2-3', '  plain']) expect(csvField(text)).toBe(text);
    expect(csvField(-3)).toBe('-3');
    expect(csvField('A-1')).toBe('A-1');
  });

  it('ends each line with CRLF, leaves empty what is empty, and starts with the mark for UTF-8', () => {
    expect(csvText(['a', 'b'], [['1', null]])).toBe('\uFEFFa,b\r\n1,\r\n');
  });
});

describe('where a problem points', () => {
  it('is the field of the same name, with RFC 6901 escapes undone', () => {
    expect(fieldName('/shop/a~1b~0c')).toBe('shop/a/b~c');
  });

  it('is also the group around it, unless that has words of its own', () => {
    expect(fieldErrors([{ pointer: '/shop/ratings/1', detail: 'too long' }])).toMatchObject({
      'shop/ratings/1': 'too long',
      'shop/ratings': 'too long',
    });
    const both = [
      { pointer: '/roles/0', detail: 'unknown' },
      { pointer: '/roles', detail: 'choose one' },
    ];
    expect(fieldErrors(both).roles).toBe('choose one');
  });
});
