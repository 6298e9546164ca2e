import { describe, expect, test } from '@jest/globals';
import { fileLimit, isBarrel, tooLargeInside } from './sizes.ts';
import { folders, sourceFiles } from './source-files.ts';

const sources = sourceFiles();

describe('the house', () => {
  test('is all there to be looked at', () => {
    expect(sources.map(({ path }) => path)).toEqual(
      expect.arrayContaining(['apps/server/src/main.ts', 'prisma/migrate.ts', 'tests/house/house.test.ts']),
    );
    expect(folders()).toEqual(expect.arrayContaining(['apps/server/src/platform/database', 'packages/rules/src']));
  });

  test('has no folder and no file named for nothing in particular', () => {
    const names = [...folders(), ...sources.map(({ path }) => path)];
    expect(names.filter((path) => /(^|\/)(common|core|utils?|helpers?|misc)(\.[a-z.]+)?$/i.test(path))).toEqual([]);
  });

  test('keeps its files small, or says on top why one is not', () => {
    const large = sources
      .filter(({ reason }) => !reason)
      .map(({ path, text }) => ({ path, lines: text.split('\n').length - 1, most: fileLimit(path) }))
      .filter(({ lines, most }) => lines > most);
    expect(large).toEqual([]);
  });

  test('keeps its functions short and their parameters few', () => {
    const large = sources.filter(({ reason }) => !reason).flatMap(({ path, text }) => tooLargeInside(path, text));
    expect(large).toEqual([]);
  });

  test('gathers nothing in barrels but the areas of rules and what a department shows to others', () => {
    const barrels = sources.filter(({ path, text }) => isBarrel(path, text) && !isDoor(path));
    expect(barrels.map(({ path }) => path)).toEqual([]);
  });
});

describe('the measure itself', () => {
  const lines = (count: number) => Array.from({ length: count }, (_, line) => `  use(${line});`).join('\n');

  test('finds a long function, a long method and too many parameters', () => {
    expect(tooLargeInside('a.ts', `export function long() {\n${lines(39)}\n}`)).toEqual([
      'a.ts:1 long has 41 lines, 40 are allowed',
    ]);
    expect(tooLargeInside('a.ts', `export function fits() {\n${lines(38)}\n}`)).toEqual([]);
    expect(tooLargeInside('a.ts', `class A {\n  long = () => {\n${lines(39)}\n  };\n}`)).toHaveLength(1);
    expect(tooLargeInside('a.ts', 'const f = (a, b, c, d) => a;')).toEqual([
      'a.ts:1 f has 4 parameters, 3 are allowed',
    ]);
    expect(
      tooLargeInside('a.ts', 'class A { constructor(@Inject(B) b, @Inject(C) c, @Inject(D) d, @Inject(E) e) {} }'),
    ).toEqual([]);
  });

  test('knows a barrel from a file that also hands something on', () => {
    expect(isBarrel('a.ts', "export * from './b.ts';\nexport { c } from './c.ts';")).toBe(true);
    expect(isBarrel('a.ts', "export { c } from './c.ts';\nexport const d = 1;")).toBe(false);
  });

  test('allows a component more, and a command file less', () => {
    expect(tooLargeInside('A.tsx', `export function Table() {\n${lines(100)}\n}`)).toEqual([]);
    expect(tooLargeInside('A.tsx', `function row() {\n${lines(100)}\n}`)).toHaveLength(1);
    expect([fileLimit('a.command.ts'), fileLimit('A.tsx'), fileLimit('a.ts')]).toEqual([120, 150, 300]);
  });
});

function isDoor(path: string): boolean {
  return (
    /^packages\/rules\/src\/[^/]+\/index\.ts$/.test(path) ||
    /^apps\/server\/src\/modules\/[^/]+\/public\.ts$/.test(path)
  );
}
