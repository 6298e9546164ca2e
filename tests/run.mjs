// `npm test`: everything that must hold, in one run from a fresh clone. Each check counts as one, each test as one; it goes
// on to the end whatever fails, and its last line is the sum. `--static` leaves the tests out, `--only=<name>` runs one step.
import { spawnSync } from 'node:child_process';
import { existsSync, mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { checkNode, ensureBuilt, ensureGenerated, ensureInstalled, root } from '../apps/server/prepare.mjs';

const bin = (path) => join(root, 'node_modules', path);
const scratch = mkdtempSync(join(tmpdir(), 'hubwright-run-'));
const score = { passed: 0, failed: 0, failures: [] };

const checks = [
  ['format and lint', bin('@biomejs/biome/bin/biome'), 'check', '--error-on-warnings', '--max-diagnostics=40'],
  ...['packages/rules', 'packages/contracts', 'apps/server', 'apps/dashboard'].map((project) => [
    `types of ${project}`,
    bin('typescript/bin/tsc'),
    '--project',
    project,
    '--noEmit',
  ]),
  [
    'who imports whom',
    bin('dependency-cruiser/bin/dependency-cruise.mjs'),
    'apps',
    'packages',
    'prisma',
    'seed',
    'tests',
  ],
  ['dead code', bin('knip/bin/knip.js'), '--no-progress', '--no-config-hints'],
];
const runners = [
  ['rules', '--selectProjects', 'rules'],
  // Modules of a vm are never let go: a worker that has grown is replaced, or the last files find no memory left.
  ['server', '--selectProjects', 'server', '--maxWorkers=2', '--workerIdleMemoryLimit=1200MB'],
  ['browser', '--selectProjects', 'browser', '--runInBand'],
];

function heading(name) {
  console.log(`\n── ${name} ${'─'.repeat(Math.max(2, 100 - name.length))}`);
}

function note(name, passed, failed) {
  score.passed += passed;
  score.failed += failed;
  if (failed > 0) score.failures.push(`${name}: ${failed} failed`);
}

function prepare(name, work) {
  heading(name);
  try {
    work();
    note(name, 1, 0);
  } catch (error) {
    console.error(error.message);
    note(name, 0, 1);
  }
}

function check([name, program, ...rest]) {
  heading(name);
  const { status } = spawnSync(process.execPath, [program, ...rest], { cwd: root, stdio: 'inherit' });
  note(name, status === 0 ? 1 : 0, status === 0 ? 0 : 1);
}

function test([name, ...rest]) {
  heading(`tests: ${name}`);
  const outputFile = join(scratch, `${name}.json`);
  const node = ['--experimental-vm-modules', '--no-warnings=ExperimentalWarning', bin('jest/bin/jest.js')];
  const flags = ['--json', `--outputFile=${outputFile}`, '--passWithNoTests', ...rest];
  const { status } = spawnSync(process.execPath, [...node, ...flags], {
    cwd: root,
    stdio: ['ignore', 'ignore', 'inherit'],
  });
  if (!existsSync(outputFile)) return note(name, 0, 1);
  const result = JSON.parse(readFileSync(outputFile, 'utf8'));
  const failed = result.numFailedTests + result.numRuntimeErrorTestSuites;
  // A run that ends badly with every test green is a failure too: a set-up that broke, a leak that crashed.
  note(name, result.numPassedTests, failed === 0 && status !== 0 ? 1 : failed);
}

const only = process.argv.find((word) => word.startsWith('--only='))?.slice('--only='.length);
const chosen = (steps) => steps.filter(([name]) => !only || name === only);

try {
  checkNode();
  ensureInstalled();
  prepare('database client', ensureGenerated);
  for (const step of chosen(checks)) check(step);
  if (!process.argv.includes('--static')) {
    prepare('builds', ensureBuilt);
    for (const step of chosen(runners)) test(step);
  }
} catch (error) {
  console.error(error.message);
  note('start', 0, 1);
} finally {
  rmSync(scratch, { recursive: true, force: true });
}

if (score.failures.length > 0) console.log(`\n${score.failures.join('\n')}`);
console.log(`\n${score.passed} passed, ${score.failed} failed`);
process.exit(score.failed > 0 ? 1 : 0);
