import { type Operation, pathKeys } from '@hubwright/contracts/operation';
import { problems } from '@hubwright/contracts/problems';
import { z } from 'zod';
import { createDocument, type ZodOpenApiOperationObject, type ZodOpenApiPathsObject } from 'zod-openapi';

const problemSchema = z
  .object({
    type: z.string(),
    title: z.string(),
    status: z.int(),
    detail: z.string(),
    next: z.string(),
    errors: z.array(z.object({ pointer: z.string(), detail: z.string() })).optional(),
  })
  .meta({ id: 'Problem', description: 'RFC 9457 problem details' });

/** The interface as OpenAPI 3.1, made from the contracts and nothing else. */
export function openApiDocument(operations: readonly Operation[]): Record<string, unknown> {
  const paths: ZodOpenApiPathsObject = {};
  for (const operation of operations) {
    const path = operation.path.replaceAll(/:(\w+)/g, '{$1}');
    paths[path] = { ...paths[path], [operation.method.toLowerCase()]: describe(operation) };
  }
  return createDocument({
    openapi: '3.1.0',
    info: {
      title: 'Hubwright',
      version: '1',
      description:
        'The one server a propeller and governor overhaul shop works from. Demonstration data is not for use on aircraft.',
    },
    paths,
  }) as unknown as Record<string, unknown>;
}

function describe(operation: Operation): ZodOpenApiOperationObject {
  const inPath = new Set(pathKeys(operation.path));
  const shape = operation.input.shape as Record<string, z.ZodType>;
  const rest = Object.fromEntries(Object.entries(shape).filter(([key]) => !inPath.has(key)));
  const path = Object.fromEntries(Object.entries(shape).filter(([key]) => inPath.has(key)));
  const hasBody = operation.kind === 'command' && !operation.takes && Object.keys(rest).length > 0;
  return {
    operationId: operation.id,
    summary: operation.summary,
    tags: [operation.noun],
    'x-access': operation.access,
    requestParams: {
      ...(inPath.size > 0 ? { path: z.object(path) } : {}),
      ...(operation.kind === 'read' && Object.keys(rest).length > 0 ? { query: z.object(rest) } : {}),
      ...(operation.kind === 'command' ? { header: headers(operation) } : {}),
    },
    ...(hasBody
      ? { requestBody: { required: true, content: { 'application/json': { schema: z.strictObject(rest) } } } }
      : {}),
    ...(operation.takes ? { requestBody: { required: true, content: fileContent(operation.takes) } } : {}),
    responses: {
      '200': {
        description: 'Done',
        content: { [operation.produces ?? 'application/json']: operation.produces ? {} : { schema: operation.output } },
      },
      default: {
        description: problemList(operation),
        content: { 'application/problem+json': { schema: problemSchema } },
      },
    },
  } as ZodOpenApiOperationObject;
}

/** A body of bytes has no schema (OpenAPI 3.1, "Considerations for File Uploads"). */
function fileContent(takes: readonly string[]) {
  return Object.fromEntries(takes.map((mediaType) => [mediaType, {}]));
}

function headers(operation: Operation) {
  return z.object({
    'Idempotency-Key': z.string().min(8).max(100),
    'Hubwright-Dry-Run': z.literal('1').optional(),
    ...(operation.versioned ? { 'If-Match': z.string() } : {}),
  });
}

function problemList(operation: Operation): string {
  return (
    operation.problems.map((type) => `${problems[type].status} ${type}: ${problems[type].title}`).join('; ') ||
    'A problem any operation may answer with'
  );
}
