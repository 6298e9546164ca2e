import { documentSetOperations } from '@hubwright/contracts/work-orders/document-set-operations';
import { Controller, Inject } from '@nestjs/common';
import { type CommandCall, CommandRunner } from '../../platform/command/runner.ts';
import { Call, Operation, Query, type ReadCall } from '../../platform/http/operation.ts';
import { DocumentSetQueries } from './documents.queries.ts';
import { takeOverDocuments } from './take-over-documents.command.ts';

@Controller()
export class DocumentSetController {
  constructor(
    @Inject(CommandRunner) private readonly runner: CommandRunner,
    @Inject(DocumentSetQueries) private readonly documents: DocumentSetQueries,
  ) {}

  @Operation(documentSetOperations.workOrderDocuments)
  documentsOf(@Query() call: ReadCall<typeof documentSetOperations.workOrderDocuments>) {
    return this.documents.of(call.input.workOrderId);
  }

  @Operation(documentSetOperations.takeOverDocuments)
  takeOver(@Call() call: CommandCall) {
    return this.runner.run(takeOverDocuments, call);
  }
}
