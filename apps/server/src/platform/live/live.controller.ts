import { serverOperations } from '@hubwright/contracts/server/operations';
import { Controller, Inject, Req, Res } from '@nestjs/common';
import type { FastifyReply, FastifyRequest } from 'fastify';
import { Operation } from '../http/operation.ts';
import { InOrder } from './in-order.ts';
import { type LiveEvent, LiveFeed } from './live-feed.ts';
import { LiveSessions } from './live-sessions.ts';

const heartbeatMilliseconds = 15_000;

/** Server-sent events: what changed, as it changes. */
@Controller()
export class LiveController {
  constructor(
    @Inject(LiveFeed) private readonly feed: LiveFeed,
    @Inject(LiveSessions) private readonly sessions: LiveSessions,
  ) {}

  @Operation(serverOperations.live)
  async stream(@Req() request: FastifyRequest, @Res() reply: FastifyReply): Promise<void> {
    const out = reply.raw;
    reply.hijack();
    // Whoever went away while the session was read is told by no event any more.
    if (out.destroyed) return;
    out.writeHead(200, {
      'content-type': 'text/event-stream',
      'cache-control': 'no-store',
      connection: 'keep-alive',
      'x-accel-buffering': 'no',
    });
    const send = (event: LiveEvent) =>
      out.write(`id: ${event.id}\ndata: ${JSON.stringify({ nouns: event.nouns, subjects: event.subjects })}\n\n`);
    const header = request.headers['last-event-id'];
    const seen = typeof header === 'string' ? header : undefined;
    const stream = new InOrder(send, seen);
    // A stream ends with its session: what ends sessions touches people, and at each beat it is looked up anyway.
    const endWithSession = async () => {
      if (!(await this.sessions.stands(request.session.sessionId))) out.end();
    };
    const stop = this.feed.subscribe((event) => {
      stream.live(event);
      if (event.nouns.includes('people')) void endWithSession();
    });
    const beat = setInterval(() => {
      out.write(': still here\n\n');
      void endWithSession();
    }, heartbeatMilliseconds);
    out.on('close', () => {
      stop();
      clearInterval(beat);
    });
    out.write('event: hello\ndata: {}\n\n');
    if (seen === undefined) return;
    const missed = await this.feed.since(seen);
    if (!missed) out.write('event: resync\ndata: {}\n\n');
    stream.caughtUp(missed);
  }
}
