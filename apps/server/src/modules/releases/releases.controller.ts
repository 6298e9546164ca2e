import { releaseOperations } from '@hubwright/contracts/releases/operations';
import { Controller, Inject } from '@nestjs/common';
import { type CommandCall, CommandRunner } from '../../platform/command/runner.ts';
import { FILES, type FileStore } from '../../platform/files/store.ts';
import { Call, Operation, Query, type ReadCall } from '../../platform/http/operation.ts';
import { approveRelease } from './approve-release.command.ts';
import { correctRelease } from './correct-release.command.ts';
import { ReleaseQueries } from './releases.queries.ts';

@Controller()
export class ReleasesController {
  constructor(
    @Inject(CommandRunner) private readonly runner: CommandRunner,
    @Inject(ReleaseQueries) private readonly queries: ReleaseQueries,
    @Inject(FILES) private readonly files: FileStore,
  ) {}

  @Operation(releaseOperations.releaseChecklist)
  checklist(@Query() call: ReadCall<typeof releaseOperations.releaseChecklist>) {
    return this.queries.checklist(call.input, call.actor);
  }

  @Operation(releaseOperations.approveRelease)
  approve(@Call() call: CommandCall) {
    return this.runner.run(approveRelease(this.files), call);
  }

  @Operation(releaseOperations.correctRelease)
  correct(@Call() call: CommandCall) {
    return this.runner.run(correctRelease(this.files), call);
  }

  @Operation(releaseOperations.listReleases)
  list(@Query() call: ReadCall<typeof releaseOperations.listReleases>) {
    return this.queries.list(call.input);
  }

  @Operation(releaseOperations.release)
  one(@Query() call: ReadCall<typeof releaseOperations.release>) {
    return this.queries.one(call.input);
  }

  @Operation(releaseOperations.releasePdf)
  pdf(@Query() call: ReadCall<typeof releaseOperations.releasePdf>) {
    return this.queries.pdf(call.input);
  }
}
