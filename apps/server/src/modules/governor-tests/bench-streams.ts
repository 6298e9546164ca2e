import { Injectable, type OnModuleDestroy } from '@nestjs/common';
import { type Arrived, InstrumentStream, type StreamView } from './instrument-stream.ts';
import { isInsideShop } from './private-address.ts';

/** A reading older than this since it came cannot be taken, in milliseconds. */
const freshFor = 2_000;
/** As long as somebody has asked within this time, the bench stays connected. */
const watchedFor = 10_000;
/** A shop has a few benches; one more looked at lets go of the one looked at longest ago. */
const mostStreams = 8;

interface Watched {
  readonly stream: InstrumentStream;
  lastAsked: number;
}
export interface Link {
  readonly instrumentId: string;
  readonly host: string;
  readonly port: number;
}

/** Connections to benches, each only while somebody looks. */
@Injectable()
export class BenchStreams implements OnModuleDestroy {
  private readonly watched = new Map<string, Watched>();
  private sweep: NodeJS.Timeout | undefined;

  /** What a bench sends now; asking is looking. */
  look(link: Link): StreamView {
    return this.watch(link).view();
  }

  age({ cameAt }: Arrived): { age: number; fresh: boolean } {
    const age = Math.round(performance.now() - cameAt);
    return { age, fresh: age <= freshFor };
  }

  /** The newest reading of a channel, while it is fresh. */
  fresh({ instrumentId }: Pick<Link, 'instrumentId'>, channel: string): Arrived | undefined {
    const arrived = this.watched
      .get(instrumentId)
      ?.stream.view()
      .channels.find((one) => one.channel === channel);
    return arrived && this.age(arrived).fresh ? arrived : undefined;
  }

  onModuleDestroy(): void {
    clearInterval(this.sweep);
    for (const id of [...this.watched.keys()]) this.drop(id);
  }

  private watch(link: Link): InstrumentStream {
    const known = this.watched.get(link.instrumentId);
    if (known && known.stream.host === link.host && known.stream.port === link.port) {
      known.lastAsked = performance.now();
      return known.stream;
    }
    this.drop(link.instrumentId);
    // Looked at again where it is used: a row could have come from a restored backup.
    if (!isInsideShop(link.host, link.port)) throw new Error('A bench is linked to an address outside the shop.');
    const oldest = [...this.watched].sort(([, one], [, other]) => one.lastAsked - other.lastAsked)[0];
    if (oldest && this.watched.size >= mostStreams) this.drop(oldest[0]);
    const stream = new InstrumentStream(link.host, link.port);
    this.watched.set(link.instrumentId, { stream, lastAsked: performance.now() });
    this.sweep ??= setInterval(() => this.dropUnwatched(), 1_000).unref();
    return stream;
  }

  private dropUnwatched(): void {
    for (const [id, { lastAsked }] of this.watched) if (performance.now() - lastAsked > watchedFor) this.drop(id);
    if (this.watched.size > 0) return;
    clearInterval(this.sweep);
    this.sweep = undefined;
  }

  private drop(id: string): void {
    this.watched.get(id)?.stream.end();
    this.watched.delete(id);
  }
}
