import { Problem, problemBody } from '@hubwright/contracts/problems';
import { RuleError } from '@hubwright/rules/errors';
import {
  type ArgumentsHost,
  Catch,
  type ExceptionFilter,
  HttpException,
  Logger,
  NotFoundException,
} from '@nestjs/common';
import type { FastifyReply, FastifyRequest } from 'fastify';
import { constraintProblem, isUnreachable } from '../database/constraint-problems.ts';
import { nothingAt } from './addresses.ts';

/** Every failure leaves as RFC 9457 problem+json. Anything unexpected is logged whole and answered without detail. */
@Catch()
export class ProblemFilter implements ExceptionFilter {
  private readonly log = new Logger('problems');

  catch(error: unknown, host: ArgumentsHost): void {
    const reply = host.switchToHttp().getResponse<FastifyReply>();
    const request = host.switchToHttp().getRequest<FastifyRequest>();
    // The router's own 404, not one of ours: perhaps only the method was wrong.
    const problem = error instanceof NotFoundException ? nothingAt(request.url) : toProblem(error);
    if (problem.type === 'internal')
      this.log.error({ request: request.id, error: error instanceof Error ? error.stack : String(error) });
    sendProblem(reply, problem);
  }
}

export function sendProblem(reply: FastifyReply, problem: Problem): void {
  if (reply.raw.headersSent) return;
  const seconds = problem.details.retryAfterSeconds;
  if (typeof seconds === 'number') reply.header('retry-after', String(seconds));
  const { allow } = problem.details;
  if (Array.isArray(allow)) reply.header('allow', allow.join(', '));
  if (problem.type === 'busy') reply.header('retry-after', '1');
  void reply
    .status(problem.status)
    .header('cache-control', 'no-store')
    .header('x-content-type-options', 'nosniff')
    .type('application/problem+json')
    .send(JSON.stringify(problemBody(problem)));
}

/** What an error means to the caller. */
export function toProblem(error: unknown): Problem {
  if (error instanceof Problem) return error;
  if (error instanceof RuleError) return ruleProblem(error);
  const status = error instanceof HttpException ? error.getStatus() : (error as { statusCode?: number }).statusCode;
  if (status === 404) return new Problem('not-found', 'There is nothing at this address');
  if (status === 413) return new Problem('too-large', 'The request is larger than one megabyte');
  if (status === 415) return new Problem('wrong-type', 'Send application/json');
  if (status === 429) return new Problem('too-many', 'Slow down a little');
  if (status !== undefined && status >= 400 && status < 500)
    return new Problem('malformed-request', 'The request could not be read');
  if (isUnreachable(error)) return new Problem('busy', 'The database does not answer');
  return constraintProblem(error) ?? new Problem('internal', 'Something went wrong here');
}

function ruleProblem(error: RuleError): Problem {
  const pointer = `/${error.path.replaceAll(/\[(\d+)\]/g, '/$1').replaceAll('.', '/')}`;
  return new Problem('rule-input', error.message, { code: error.code }, [{ pointer, detail: error.message }]);
}
