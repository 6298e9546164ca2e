import { existsSync, readFileSync } from 'node:fs';
import { describe, expect, it } from '@jest/globals';

// OWASP ASVS 5.0.0, all requirements of level 1 in the chapters that apply: 61 of its 70. V9 (4) and V10 (5) are of
// techniques not used here, and V17 has none.
const levelOne = `
  1.2.1 1.2.2 1.2.3 1.2.4 1.2.5 1.3.1 1.3.2 1.5.1 2.1.1 2.2.1 2.2.2 2.3.1
  3.2.1 3.2.2 3.3.1 3.4.1 3.4.2 3.5.1 3.5.2 3.5.3 4.1.1 4.4.1 5.2.1 5.2.2 5.3.1 5.3.2
  6.1.1 6.2.1 6.2.2 6.2.3 6.2.4 6.2.5 6.2.6 6.2.7 6.2.8 6.3.1 6.3.2 6.4.1 6.4.2
  7.2.1 7.2.2 7.2.3 7.2.4 7.4.1 7.4.2 8.1.1 8.2.1 8.2.2 8.3.1
  11.3.1 11.3.2 11.4.1 12.1.1 12.2.1 12.2.2 13.4.1 14.2.1 14.3.1 15.1.1 15.2.1 15.3.1`
  .trim()
  .split(/\s+/);

const rows = readFileSync('tests/security/asvs.md', 'utf8')
  .split('\n')
  .map((line) => /^\| (\d+\.\d+\.\d+)\s*\| ([^|]+?)\s*\| (.+?)\s*\|$/.exec(line))
  .filter((found) => found !== null)
  .map(([, id = '', asks = '', answer = '']) => ({ id, asks, answer }));

describe('the table of the OWASP ASVS 5.0', () => {
  it('holds every requirement of level 1 that applies, once, in order', () => {
    expect(levelOne).toHaveLength(61);
    expect(rows.map(({ id }) => id)).toEqual(levelOne);
  });

  it.each(rows.map(({ id, answer }) => [id, answer] as const))(
    '%s names a test that exists, or why there is none',
    (_, answer) => {
      const named = [...answer.matchAll(/`(\S+\.test\.ts)(?: › ([^`]+))?`/g)];
      const reason = /[*_]Deviation:[*_] (.+)$/.exec(answer)?.[1] ?? '';
      expect(named.length > 0 || reason.length > 30).toBe(true);
      for (const [, file = '', title = ''] of named) {
        expect({ file, exists: existsSync(file) }).toEqual({ file, exists: true });
        // A title is the text of an `it`, `test` or their tables.
        const text = readFileSync(file, 'utf8');
        expect({
          file,
          title,
          stands: title === '' || text.includes(`'${title}'`) || text.includes(`${title}'`),
        }).toEqual({
          file,
          title,
          stands: true,
        });
      }
    },
  );
});
