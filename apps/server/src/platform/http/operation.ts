import { Readable } from 'node:stream';
import type { Operation as AnyOperation, Input } from '@hubwright/contracts/operation';
import { pathKeys } from '@hubwright/contracts/operation';
import { Problem } from '@hubwright/contracts/problems';
import {
  applyDecorators,
  createParamDecorator,
  type ExecutionContext,
  HttpCode,
  RequestMapping,
  RequestMethod,
  SetMetadata,
  StreamableFile,
} from '@nestjs/common';
import type { FastifyRequest } from 'fastify';
import type { Actor } from '../command/actor.ts';
import { type CommandCall, parseInput } from '../command/runner.ts';

const OPERATION = 'hubwright:operation';

/** Ties a controller method to its operation: path, method, access and the check of the reply all come from the contract. */
export function Operation(operation: AnyOperation): MethodDecorator {
  return applyDecorators(
    ...(operation.kind === 'read' ? [CheckReply(operation)] : []),
    SetMetadata(OPERATION, operation),
    RequestMapping({ path: operation.path, method: RequestMethod[operation.method] }),
    HttpCode(200),
  );
}

type Handler = (...given: unknown[]) => unknown;

/**
 * A read's reply is checked by the same schema the browser imports; a column that should not leave the server does not. The
 * runner checks a command's. Part of the method itself, since an interceptor would put observables around every request.
 */
function CheckReply({ output }: AnyOperation): MethodDecorator {
  return (_target, _name, descriptor) => {
    const method = descriptor as unknown as { value: Handler };
    const handler = method.value;
    const checked = async function (this: unknown, ...given: unknown[]) {
      const reply = await handler.apply(this, given);
      return reply instanceof StreamableFile || reply === undefined ? reply : output.parse(reply);
    };
    for (const key of Reflect.getMetadataKeys(handler))
      Reflect.defineMetadata(key, Reflect.getMetadata(key, handler), checked);
    method.value = checked;
  };
}

export function operationOf(context: ExecutionContext): AnyOperation | undefined {
  return Reflect.getMetadata(OPERATION, context.getHandler()) as AnyOperation | undefined;
}

export interface SignedInRequest extends FastifyRequest {
  actor?: Actor;
}

/** What a read's controller method gets. */
export interface ReadCall<O extends AnyOperation> {
  readonly input: Input<O>;
  readonly actor: Actor;
}

/** The parsed input of a read and who asks. */
export const Query = createParamDecorator((_: unknown, context: ExecutionContext): ReadCall<AnyOperation> => {
  const request = context.switchToHttp().getRequest<SignedInRequest>();
  const operation = operationOf(context) as AnyOperation;
  return { input: parseInput(operation, rawInput(operation, request)) as never, actor: request.actor as Actor };
});

/** A command's call as the runner takes it: raw input, actor, key, version seen, dry run. */
export const Call = createParamDecorator((_: unknown, context: ExecutionContext): CommandCall => {
  const request = context.switchToHttp().getRequest<SignedInRequest>();
  const operation = operationOf(context) as AnyOperation;
  return {
    input: rawInput(operation, request),
    actor: request.actor as Actor,
    key: idempotencyKey(request),
    expectedVersion: seenVersion(request),
    dryRun: request.headers['hubwright-dry-run'] === '1',
  };
});

/** Path values win over a body that repeats their names: the address says which thing is meant. */
export function rawInput(operation: AnyOperation, request: FastifyRequest): unknown {
  const given = operation.kind === 'read' ? request.query : bodyOf(operation, request);
  if (typeof given !== 'object' || given === null || Array.isArray(given)) {
    throw new Problem('malformed-request', 'Send one JSON object');
  }
  const path = request.params as Record<string, string>;
  return { ...given, ...Object.fromEntries(pathKeys(operation.path).map((key) => [key, path[key]])) };
}

/** A file is read by the one command that takes it, as a stream; to every other it is not JSON. */
function bodyOf(operation: AnyOperation, { body }: FastifyRequest): unknown {
  const isFile = body instanceof Readable;
  if (isFile && !operation.takes) throw new Problem('wrong-type', 'Send application/json');
  if (operation.takes && !isFile) throw new Problem('not-a-file', `Send one file as ${operation.takes.join(', ')}`);
  return isFile ? {} : (body ?? {});
}

function idempotencyKey(request: FastifyRequest): string {
  const key = request.headers['idempotency-key'];
  if (typeof key !== 'string' || !/^[\w-]{8,100}$/.test(key))
    throw new Problem('key-missing', 'Send an Idempotency-Key of 8 to 100 letters, digits or dashes');
  return key;
}

function seenVersion(request: FastifyRequest): number | undefined {
  const header = request.headers['if-match'];
  if (header === undefined) return undefined;
  const digits = /^"?(\d{1,9})"?$/.exec(header)?.[1];
  if (digits === undefined)
    throw new Problem('malformed-request', 'If-Match holds the version number you saw, such as "3"');
  return Number(digits);
}
