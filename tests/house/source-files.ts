import { readdirSync, readFileSync } from 'node:fs';
import { join, relative } from 'node:path';
import { fileURLToPath } from 'node:url';

const root = fileURLToPath(new URL('../..', import.meta.url));
const notOurs = new Set(['node_modules', 'dist', 'generated', 'coverage', '.git', '.hubwright', '.cache']);

/** Every folder of the repository that people write in. */
export function folders(): string[] {
  return walk(root)
    .filter((entry) => entry.isDirectory)
    .map(({ path }) => path);
}

/** Every program text, with the reason it gives on its first lines for being larger than the house allows. */
export function sourceFiles(): { path: string; text: string; reason: string | undefined }[] {
  return walk(root)
    .filter(({ path, isDirectory }) => !isDirectory && /\.(ts|tsx|mjs|cjs|js)$/.test(path))
    .map(({ path }) => {
      const text = readFileSync(join(root, path), 'utf8');
      const reason = /^(?:#!.*\n)?\/\/ size: (\S.*)$/m.exec(text.slice(0, 400))?.[1];
      return { path, text, reason };
    });
}

function walk(folder: string): { path: string; isDirectory: boolean }[] {
  return readdirSync(folder, { withFileTypes: true })
    .filter((entry) => !notOurs.has(entry.name))
    .flatMap((entry) => {
      const at = join(folder, entry.name);
      const here = { path: relative(root, at).replaceAll('\\', '/'), isDirectory: entry.isDirectory() };
      return entry.isDirectory() ? [here, ...walk(at)] : [here];
    });
}
