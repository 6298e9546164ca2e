import { readFileSync } from 'node:fs';
import fc from 'fast-check';

/** A JSON Schema as the committed description of the interface holds it. */
export interface Schema {
  readonly [keyword: string]: unknown;
}

/** One endpoint as OpenAPI describes it. */
export interface Endpoint {
  readonly id: string;
  readonly method: string;
  /** With `{name}` where a value goes. */
  readonly path: string;
  readonly inPath: Readonly<Record<string, Schema>>;
  readonly inQuery: Readonly<Record<string, Schema>>;
  readonly body: Schema | undefined;
  /** Its body is a table as a file. */
  readonly takesTable: boolean;
  readonly versioned: boolean;
}

interface Described {
  operationId: string;
  parameters?: { in: string; name: string; schema: Schema }[];
  requestBody?: { content: Record<string, { schema: Schema }> };
}

const description = JSON.parse(readFileSync('packages/contracts/openapi.json', 'utf8')) as {
  paths: Record<string, Record<string, Described>>;
  components: { schemas: Record<string, Schema> };
};

/** Every endpoint of the committed description. */
export const endpoints: readonly Endpoint[] = Object.entries(description.paths).flatMap(([path, methods]) =>
  Object.entries(methods).map(([method, described]) => ({
    id: described.operationId,
    method: method.toUpperCase(),
    path,
    inPath: parametersIn(described, 'path'),
    inQuery: parametersIn(described, 'query'),
    body: described.requestBody?.content['application/json']?.schema,
    takesTable: described.requestBody?.content['text/csv'] !== undefined,
    versioned: (described.parameters ?? []).some(({ name }) => name === 'If-Match'),
  })),
);

function parametersIn({ parameters = [] }: Described, place: string): Record<string, Schema> {
  return Object.fromEntries(parameters.filter((one) => one.in === place).map(({ name, schema }) => [name, schema]));
}

/** The schema a `$ref` stands for. */
export function resolved(schema: Schema): Schema {
  const name = typeof schema.$ref === 'string' ? schema.$ref.split('/').at(-1) : undefined;
  return name === undefined ? schema : (description.components.schemas[name] as Schema);
}

const byFormat: Record<string, fc.Arbitrary<string>> = {
  uuid: fc.uuid({ version: 7 }),
  date: fc.integer({ min: 0, max: 20_000 }).map((day) => new Date(day * 86_400_000).toISOString().slice(0, 10)),
  'date-time': fc.integer({ min: 0, max: 1_700_000_000 }).map((second) => new Date(second * 1000).toISOString()),
  email: fc.constant('someone@example.com'),
};

function texts({ format, pattern, minLength = 0, maxLength = 60 }: Schema): fc.Arbitrary<string> {
  const known = byFormat[String(format)];
  if (known) return known;
  if (typeof pattern === 'string') return fc.stringMatching(new RegExp(pattern));
  const least = Number(minLength);
  // Printable, and never only blanks, which trimming would empty.
  return fc
    .string({ minLength: Math.max(0, least - 1), maxLength: Math.max(least, Math.min(Number(maxLength), 40)) - 1 })
    .map((text) => `x${text.trimEnd().padEnd(least - 1, 'y')}`);
}

function objects(schema: Schema): fc.Arbitrary<unknown> {
  const { properties, required = [], additionalProperties } = schema;
  if (properties === undefined && typeof additionalProperties === 'object')
    return fc.dictionary(fc.stringMatching(/^[a-z]{1,8}$/), fitting(additionalProperties as Schema), { maxKeys: 3 });
  const shape = Object.entries((properties ?? {}) as Record<string, Schema>);
  return fc.record(Object.fromEntries(shape.map(([name, one]) => [name, fitting(one)])), {
    requiredKeys: required as string[],
  });
}

/** Values a schema accepts, as far as a schema can say. */
export function fitting(given: Schema): fc.Arbitrary<unknown> {
  const schema = resolved(given);
  if ('const' in schema) return fc.constant(schema.const);
  if (Array.isArray(schema.enum)) return fc.constantFrom(...schema.enum);
  const either = schema.anyOf ?? schema.oneOf;
  if (Array.isArray(either)) return fc.oneof(...(either as Schema[]).map(fitting));
  const type = Array.isArray(schema.type) ? schema.type[0] : schema.type;
  const { minimum = 0, maximum = 1_000_000, minItems = 0, maxItems = 3 } = schema;
  switch (type) {
    case 'string':
      return texts(schema);
    case 'integer':
    case 'number':
      // A least of 0.1 is a least whole number of 1.
      return fc.integer({
        min: Math.max(Math.ceil(Number(minimum)), -1e6),
        max: Math.min(Math.floor(Number(maximum)), 1e6),
      });
    case 'boolean':
      return fc.boolean();
    case 'null':
      return fc.constant(null);
    case 'array': {
      const least = Number(minItems);
      return fc.array(fitting(schema.items as Schema), {
        minLength: least,
        maxLength: Math.min(Number(maxItems), least + 2),
      });
    }
    default:
      return objects(schema);
  }
}

/** A whole request that the description accepts: path values, query and body. */
export function fittingRequest(endpoint: Endpoint): fc.Arbitrary<{ path: string; query: object; body: unknown }> {
  const each = (schemas: Readonly<Record<string, Schema>>) =>
    fc.record(Object.fromEntries(Object.entries(schemas).map(([name, schema]) => [name, fitting(schema)])), {
      requiredKeys: Object.keys(endpoint.inPath).filter((name) => name in schemas),
    });
  return fc
    .record({
      inPath: each(endpoint.inPath) as fc.Arbitrary<Record<string, unknown>>,
      query: each(endpoint.inQuery) as fc.Arbitrary<object>,
      body: endpoint.body ? fitting(endpoint.body) : fc.constant(undefined),
    })
    .map(({ inPath, query, body }) => ({ path: addressOf(endpoint, inPath), query, body }));
}

export function addressOf({ path }: Endpoint, values: Readonly<Record<string, unknown>>): string {
  return path.replaceAll(/\{(\w+)\}/g, (_, name: string) => encodeURIComponent(String(values[name])));
}
