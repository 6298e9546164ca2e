// `npm start`: from a fresh clone to a running shop. The server runs in this very process, so that whatever stops or
// kills it means the server itself. With `--build` it ends before that.
import { checkNode, ensureBuilt, ensureInstalled } from './prepare.mjs';

try {
  checkNode();
  ensureInstalled();
  ensureBuilt();
} catch (error) {
  console.error(error.message);
  process.exit(1);
}
if (process.argv.includes('--build')) process.exit(0);
process.env.NODE_ENV ??= 'production'; // only now: the packages that build are development's
process.setSourceMapsEnabled(true);
await import('./dist/main.js');
