import { defineConfig } from 'prisma/config';

// Only `generate`, `validate` and `format` run through this CLI; migrations go through prisma/migrate.ts.
export default defineConfig({ schema: 'prisma/schema' });
