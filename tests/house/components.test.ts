import { execFile } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { promisify } from 'node:util';
import { beforeAll, describe, expect, test } from '@jest/globals';

const run = promisify(execFile);

/** A component as CycloneDX writes it. */
interface Component {
  readonly name: string;
  readonly group?: string;
  readonly version: string;
  readonly purl?: string;
  readonly properties?: { name: string; value: string }[];
  readonly licenses?: { license?: { id?: string; name?: string }; expression?: string }[];
}
interface Bill {
  readonly bomFormat: string;
  readonly specVersion: string;
  readonly components: readonly Component[];
}

/** Licences that ask for no more than a notice, or whose copyleft ends at the file or library that has it. */
const allowed = new Set([
  'MIT',
  'MIT-0',
  'ISC',
  'Apache-2.0',
  'BSD-2-Clause',
  'BSD-3-Clause',
  '0BSD',
  'BlueOak-1.0.0',
  'CC0-1.0',
  'CC-BY-4.0',
  'Unlicense',
  'Zlib',
  'PostgreSQL',
  'OFL-1.1',
  'MPL-2.0',
  'EPL-2.0',
  'LGPL-3.0-or-later',
  'Python-2.0',
]);

/** SPDX expressions: of `OR` one side must be allowed, of `AND` both. */
function permits(expression: string): boolean {
  const plain = expression.replaceAll(/[()]/g, '');
  return plain.split(/ or /i).some((side) => side.split(/ and /i).every((id) => allowed.has(id.trim())));
}

function licenceOf(component: Component): string {
  const named = (component.licenses ?? []).map(
    ({ license, expression }) => expression ?? license?.id ?? license?.name ?? '',
  );
  return named.length > 0 ? named.join(' AND ') : (readByHand[fullName(component)] ?? '');
}

/** `npm sbom` writes the scope of workspaces only into the package URL. */
function fullName({ group, name, purl = '' }: Component): string {
  const scoped = /^pkg:npm\/%40([^/]+)\/([^@]+)@/.exec(purl);
  if (scoped) return `@${scoped[1]}/${scoped[2]}`;
  return group ? `${group}/${name}` : name;
}

/** Packages whose package.json names no licence; what their licence file or readme says was read by a person. */
const readByHand: Record<string, string> = { pause: 'MIT', 'png-js': 'MIT' };

/** What is only there to build and test is marked; the rest ships. */
const ships = ({ properties = [] }: Component) =>
  !properties.some(({ name }) => name === 'cdx:npm:package:development');

describe('npm run sbom', () => {
  let bill: Bill;
  beforeAll(async () => {
    const { stdout } = await run('npm', ['run', '--silent', 'sbom'], { maxBuffer: 64 * 1024 * 1024 });
    bill = JSON.parse(stdout) as Bill;
  }, 120_000);

  test('writes CycloneDX JSON in which every component has a name, a version and a package URL', () => {
    expect(bill.bomFormat).toBe('CycloneDX');
    expect(bill.specVersion).toMatch(/^1\.\d$/);
    expect(bill.components.length).toBeGreaterThan(100);
    const incomplete = bill.components.filter(
      ({ name, version, purl }) => !name || !version || !purl?.startsWith('pkg:npm/'),
    );
    expect(incomplete.map(fullName)).toEqual([]);
  });

  test('names every package that the server, the dashboard, the rules and the contracts ask for', () => {
    const named = new Set(bill.components.filter(ships).map(fullName));
    const asked = ['apps/server', 'apps/dashboard', 'packages/rules', 'packages/contracts'].flatMap((folder) => {
      const { dependencies = {} } = JSON.parse(readFileSync(`${folder}/package.json`, 'utf8')) as {
        dependencies?: Record<string, string>;
      };
      return Object.keys(dependencies);
    });
    expect(asked.length).toBeGreaterThan(30);
    expect(asked.filter((name) => !named.has(name))).toEqual([]);
  });

  test('every licence of what ships is one that allows our use', () => {
    const ours = /^@hubwright\/|^hubwright$/;
    const foreign = bill.components.filter((component) => ships(component) && !ours.test(fullName(component)));
    const refused = foreign
      .map((component) => `${fullName(component)}: ${licenceOf(component) || 'none named'}`)
      .filter((line) => !permits(line.split(': ')[1] ?? ''));
    expect(refused).toEqual([]);
  });

  test('the measure itself refuses what it must', () => {
    expect(permits('(MIT OR GPL-3.0-only)')).toBe(true);
    for (const expression of ['GPL-3.0-only', 'AGPL-3.0-or-later', 'MIT AND SSPL-1.0', 'UNLICENSED', ''])
      expect(permits(expression)).toBe(false);
  });
});
