import { benchLinkOperations } from '@hubwright/contracts/governor-tests/link-operations';
import { Controller, Inject } from '@nestjs/common';
import { type CommandCall, CommandRunner } from '../../platform/command/runner.ts';
import { Call, Operation, Query, type ReadCall } from '../../platform/http/operation.ts';
import { BenchLinkQueries } from './bench-link.queries.ts';
import { linkBench } from './link-bench.command.ts';
import { unlinkBench } from './unlink-bench.command.ts';

@Controller()
export class BenchLinkController {
  constructor(
    @Inject(CommandRunner) private readonly runner: CommandRunner,
    @Inject(BenchLinkQueries) private readonly links: BenchLinkQueries,
  ) {}

  @Operation(benchLinkOperations.benchLink)
  link(@Query() call: ReadCall<typeof benchLinkOperations.benchLink>) {
    return this.links.link(call.input.instrumentId);
  }

  @Operation(benchLinkOperations.linkBench)
  setLink(@Call() call: CommandCall) {
    return this.runner.run(linkBench, call);
  }

  @Operation(benchLinkOperations.unlinkBench)
  unlink(@Call() call: CommandCall) {
    return this.runner.run(unlinkBench, call);
  }

  @Operation(benchLinkOperations.liveBenchReadings)
  live(@Query() call: ReadCall<typeof benchLinkOperations.liveBenchReadings>) {
    return this.links.live(call.input.instrumentId);
  }
}
