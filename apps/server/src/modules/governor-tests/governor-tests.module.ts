import { Module } from '@nestjs/common';
import { BenchLinkController } from './bench-link.controller.ts';
import { BenchLinkQueries } from './bench-link.queries.ts';
import { BenchStreams } from './bench-streams.ts';
import { CertificateQueries } from './certificate.queries.ts';
import { GovernorTestsController } from './governor-tests.controller.ts';
import { ProgramQueries } from './programs.queries.ts';
import { RunQueries } from './runs.queries.ts';

@Module({
  controllers: [GovernorTestsController, BenchLinkController],
  providers: [BenchStreams, BenchLinkQueries, CertificateQueries, ProgramQueries, RunQueries],
})
export class GovernorTestsModule {}
