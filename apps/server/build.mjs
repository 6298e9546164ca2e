// Bundles the server: our own packages go in, those from the registry stay outside. Workers are entries of their own.
import { readdirSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { build } from 'esbuild';

const here = fileURLToPath(new URL('.', import.meta.url));
const workers = readdirSync(join(here, 'src'), { recursive: true }).filter((name) => name.endsWith('.worker.ts'));

const registryPackagesStayOutside = {
  name: 'registry-packages-stay-outside',
  setup({ onResolve }) {
    onResolve({ filter: /^[^./]/ }, ({ path, kind }) =>
      kind === 'entry-point' || path.startsWith('@hubwright/') ? undefined : { path, external: true },
    );
  },
};

await build({
  absWorkingDir: here,
  entryPoints: ['src/main.ts', ...workers.map((name) => join('src', name))],
  outdir: 'dist',
  entryNames: '[name]',
  bundle: true,
  splitting: true,
  format: 'esm',
  platform: 'node',
  target: 'node20',
  sourcemap: 'linked',
  keepNames: true,
  logLevel: 'warning',
  plugins: [registryPackagesStayOutside],
}).catch(() => process.exit(1)); // esbuild has said what is wrong
