import {
  type CallHandler,
  type ExecutionContext,
  Injectable,
  type NestInterceptor,
  StreamableFile,
} from '@nestjs/common';
import { map, type Observable } from 'rxjs';
import { operationOf } from './operation.ts';

/** A reply is checked by the same schema the browser imports; a column that should not leave the server does not. */
@Injectable()
export class ReplyInterceptor implements NestInterceptor {
  intercept(context: ExecutionContext, next: CallHandler): Observable<unknown> {
    const operation = operationOf(context);
    if (!operation || operation.kind === 'command') return next.handle();
    return next
      .handle()
      .pipe(
        map((reply) =>
          reply instanceof StreamableFile || reply === undefined ? reply : operation.output.parse(reply),
        ),
      );
  }
}
