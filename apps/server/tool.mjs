// `node apps/server/tool.mjs <name> …`: runs a program beside the server (backup, restore, verify-records …) from its build.
import { checkNode, ensureBuilt, ensureInstalled } from './prepare.mjs';

const [name] = process.argv.splice(2, 1);
try {
  checkNode();
  ensureInstalled();
  ensureBuilt();
} catch (error) {
  console.error(error.message);
  process.exit(1);
}
process.env.NODE_ENV ??= 'production';
process.setSourceMapsEnabled(true);
await import(`./dist/${name}.js`);
