import { documentOperations } from '@hubwright/contracts/manuals/document-operations';
import { Controller, Inject } from '@nestjs/common';
import { type CommandCall, CommandRunner } from '../../platform/command/runner.ts';
import { Call, Operation, Query, type ReadCall } from '../../platform/http/operation.ts';
import { addDocument } from './add-document.command.ts';
import { checkDocument } from './check-document.command.ts';
import { DocumentQueries } from './documents.queries.ts';
import { issueDocument } from './issue-document.command.ts';
import { setDocumentModels } from './set-document-models.command.ts';
import { withdrawDocument } from './withdraw-document.command.ts';

@Controller()
export class DocumentsController {
  constructor(
    @Inject(CommandRunner) private readonly runner: CommandRunner,
    @Inject(DocumentQueries) private readonly documents: DocumentQueries,
  ) {}

  @Operation(documentOperations.listDocuments)
  list(@Query() call: ReadCall<typeof documentOperations.listDocuments>) {
    return this.documents.list(call.input);
  }

  @Operation(documentOperations.addDocument)
  add(@Call() call: CommandCall) {
    return this.runner.run(addDocument, call);
  }

  @Operation(documentOperations.issueDocument)
  issue(@Call() call: CommandCall) {
    return this.runner.run(issueDocument, call);
  }

  @Operation(documentOperations.setDocumentModels)
  setModels(@Call() call: CommandCall) {
    return this.runner.run(setDocumentModels, call);
  }

  @Operation(documentOperations.withdrawDocument)
  withdraw(@Call() call: CommandCall) {
    return this.runner.run(withdrawDocument, call);
  }

  @Operation(documentOperations.checkDocument)
  check(@Call() call: CommandCall) {
    return this.runner.run(checkDocument, call);
  }
}
