import { readFile } from 'node:fs/promises';
import { createRequire } from 'node:module';
import { PrismaPg } from '@prisma/adapter-pg';
import { bindMigrationAwareSqlAdapterFactory, ColumnTypeEnum } from '@prisma/driver-adapter-utils';
import type * as Engine from '@prisma/schema-engine-wasm';
import pg from 'pg';

const charOid = 18;
const charArrayOid = 1002;

/**
 * The engine reads PostgreSQL's own tables, where many columns have the one-byte type "char". The adapter knows no such
 * scalar, only its array: it is shown the array's number and its answer turned back into the scalar.
 */
class CatalogPg extends PrismaPg {
  override async connect() {
    const adapter = await super.connect();
    const pool = adapter.underlyingDriver();
    const query = pool.query.bind(pool) as (...args: unknown[]) => Promise<pg.QueryResult>;
    const queryRaw = adapter.queryRaw.bind(adapter);
    Object.assign(pool, {
      query: async (...args: unknown[]) => {
        const result = await query(...args);
        for (const field of result.fields ?? []) if (field.dataTypeID === charOid) field.dataTypeID = charArrayOid;
        return result;
      },
    });
    adapter.queryRaw = async (sql) => {
      const result = await queryRaw(sql);
      const { Character, CharacterArray } = ColumnTypeEnum;
      return { ...result, columnTypes: result.columnTypes.map((type) => (type === CharacterArray ? Character : type)) };
    };
    // The adapter cuts scripts at every semicolon, also inside comments and function bodies. Sent whole, a script is one transaction.
    adapter.executeScript = async (sql) => {
      await adapter.executeRaw({ sql, args: [], argTypes: [] });
    };
    return adapter;
  }
}

/** The little of it that is used here; TypeScript has these types only for browsers. */
declare const WebAssembly: {
  instantiate(bytes: Uint8Array, imports: object): Promise<{ instance: { exports: Record<string, unknown> } }>;
};

let engineModule: Promise<typeof Engine> | undefined;

/** Once per process: the module's glue keeps views on the memory of one instance. */
async function loadEngine(): Promise<typeof Engine> {
  const glue = await import('@prisma/schema-engine-wasm/schema_engine_bg');
  const wasm = createRequire(import.meta.url)
    .resolve('@prisma/schema-engine-wasm')
    .replace('schema_engine.js', 'schema_engine_bg.wasm');
  const { instance } = await WebAssembly.instantiate(await readFile(wasm), {
    './schema_engine_bg.js': { ...glue, ...patientGlue(glue) },
  });
  glue.__wbg_set_wasm(instance.exports);
  (instance.exports.__wbindgen_start as () => void)();
  return glue;
}

/** The engine's timers (ten seconds for its own lock) must not keep a finished program from ending. */
function patientGlue(glue: object): Record<string, unknown> {
  const name = Object.keys(glue).find((key) => key.startsWith('__wbg_setTimeout_'));
  return name ? { [name]: (run: () => void, ms: number) => setTimeout(run, ms >>> 0).unref() } : {};
}

/**
 * Prisma's own schema engine as WebAssembly: the same program as the binary its command line downloads. It is not a
 * documented interface, so the package is pinned to one build and the migration folder keeps Prisma's own format:
 * wherever downloads work, `prisma migrate deploy` does the same.
 */
export async function openEngine(
  url: string,
  schema: { path: string; content: string }[],
): Promise<{ schema: Engine.SchemaEngine; close(): Promise<void> }> {
  engineModule ??= loadEngine();
  const { SchemaEngine } = await engineModule;
  const pool = new pg.Pool({ connectionString: url, max: 2 });
  const adapter = bindMigrationAwareSqlAdapterFactory(new CatalogPg(pool));
  const datamodels = schema.map(({ path, content }): [string, string] => [path, content]);
  const engine = await SchemaEngine.new({ datamodels }, () => undefined, adapter);
  return {
    schema: engine,
    close: async () => {
      engine.free();
      await pool.end();
    },
  };
}
