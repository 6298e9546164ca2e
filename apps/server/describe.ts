import { writeFile } from 'node:fs/promises';
import { allOperations } from '@hubwright/contracts/routes';
import { accessTable } from './src/platform/http/access-table.ts';
import { openApiDocument } from './src/platform/http/open-api.ts';

// Writes the two committed descriptions of the interface; the tests compare them with what the server serves.
const root = new URL('../../', import.meta.url);
await writeFile(
  new URL('packages/contracts/openapi.json', root),
  `${JSON.stringify(openApiDocument(allOperations), null, 2)}\n`,
);
await writeFile(new URL('tests/security/access-table.md', root), accessTable(allOperations));
