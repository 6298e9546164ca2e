import { kitListOperations } from '@hubwright/contracts/manuals/kit-list-operations';
import { Controller, Inject } from '@nestjs/common';
import { type CommandCall, CommandRunner } from '../../platform/command/runner.ts';
import { Call, Operation, Query, type ReadCall } from '../../platform/http/operation.ts';
import { dropKitListDraft } from './drop-kit-list-draft.command.ts';
import { issueKitLists } from './issue-kit-lists.command.ts';
import { KitListQueries } from './kit-lists.queries.ts';

@Controller()
export class KitListsController {
  constructor(
    @Inject(CommandRunner) private readonly runner: CommandRunner,
    @Inject(KitListQueries) private readonly queries: KitListQueries,
  ) {}

  @Operation(kitListOperations.listKitListDrafts)
  list(@Query() call: ReadCall<typeof kitListOperations.listKitListDrafts>) {
    return this.queries.list(call.input);
  }

  @Operation(kitListOperations.issueKitLists)
  issue(@Call() call: CommandCall) {
    return this.runner.run(issueKitLists, call);
  }

  @Operation(kitListOperations.dropKitListDraft)
  drop(@Call() call: CommandCall) {
    return this.runner.run(dropKitListDraft, call);
  }
}
