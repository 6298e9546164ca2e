import type { benchLinkOperations } from '@hubwright/contracts/governor-tests/link-operations';
import type { Reply } from '@hubwright/contracts/operation';
import { Inject, Injectable } from '@nestjs/common';
import { found } from '../../platform/command/version.ts';
import { Reads } from '../../platform/database/reads.ts';
import { BenchStreams } from './bench-streams.ts';

@Injectable()
export class BenchLinkQueries {
  constructor(
    @Inject(Reads) private readonly reads: Reads,
    @Inject(BenchStreams) private readonly streams: BenchStreams,
  ) {}

  async link(instrumentId: string): Promise<Reply<typeof benchLinkOperations.benchLink>> {
    const link = await this.linkOf(instrumentId);
    return { id: instrumentId, host: link?.host ?? null, port: link?.port ?? null, version: link?.version ?? 0 };
  }

  async live(instrumentId: string): Promise<Reply<typeof benchLinkOperations.liveBenchReadings>> {
    const link = await this.linkOf(instrumentId);
    if (!link) return { state: 'not-linked', trouble: null, channels: [], refused: 0, lastRefused: null };
    const view = this.streams.look(link);
    const channels = view.channels
      .map(({ cameAt, ...one }) => ({ ...one, ...this.streams.age({ ...one, cameAt }) }))
      .sort((one, other) => one.channel.localeCompare(other.channel));
    return { ...view, channels };
  }

  private async linkOf(instrumentId: string) {
    const bench = found(
      await this.reads.models.instrument.findUnique({ where: { id: instrumentId }, include: { benchLink: true } }),
      'This instrument',
    );
    return bench.benchLink;
  }
}
