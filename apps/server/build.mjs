// Bundles the server: our own packages go in, those from the registry stay outside. Workers are entries of their own.
import { readdirSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { build } from 'esbuild';

const here = fileURLToPath(new URL('.', import.meta.url));
const tools = readdirSync(join(here, 'src/tools'));
const workers = readdirSync(join(here, 'src'), { recursive: true }).filter((name) => name.endsWith('.worker.ts'));

rmSync(join(here, 'dist'), { recursive: true, force: true });

const registryPackagesStayOutside = {
  name: 'registry-packages-stay-outside',
  setup({ onResolve }) {
    onResolve({ filter: /^[^./]/ }, ({ path, kind }) =>
      kind === 'entry-point' || path.startsWith('@hubwright/') ? undefined : { path, external: true },
    );
  },
};

const settings = {
  absWorkingDir: here,
  bundle: true,
  format: 'esm',
  platform: 'node',
  target: 'node20',
  keepNames: true,
  logLevel: 'warning',
};
const server = build({
  ...settings,
  entryPoints: [
    'src/main.ts',
    ...tools.map((name) => join('src/tools', name)),
    ...workers.map((name) => join('src', name)),
  ],
  outdir: 'dist',
  entryNames: '[name]',
  splitting: true,
  sourcemap: 'linked',
  plugins: [registryPackagesStayOutside],
});
// The verifier travels with exported records: one file that needs Node alone.
const verifier = build({
  ...settings,
  entryPoints: { verify: 'src/platform/records/verify-folder.cli.ts' },
  outdir: 'dist',
  outExtension: { '.js': '.mjs' },
  minifySyntax: true,
});
await Promise.all([server, verifier]).catch(() => process.exit(1)); // esbuild has said what is wrong
