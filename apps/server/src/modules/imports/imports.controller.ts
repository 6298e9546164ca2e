import { importOperations } from '@hubwright/contracts/imports/operations';
import { Controller, Inject, Req, StreamableFile } from '@nestjs/common';
import type { FastifyRequest } from 'fastify';
import { type CommandCall, CommandRunner } from '../../platform/command/runner.ts';
import { Call, Operation, Query, type ReadCall } from '../../platform/http/operation.ts';
import { acceptOpeningStock } from './accept-opening-stock.command.ts';
import { applyImport } from './apply-import.command.ts';
import { ExportQueries } from './exports.queries.ts';
import { ImportQueries } from './imports.queries.ts';
import { TableUploads } from './table-uploads.ts';

@Controller()
export class ImportsController {
  constructor(
    @Inject(CommandRunner) private readonly runner: CommandRunner,
    @Inject(ImportQueries) private readonly queries: ImportQueries,
    @Inject(ExportQueries) private readonly exports: ExportQueries,
    @Inject(TableUploads) private readonly uploads: TableUploads,
  ) {}

  @Operation(importOperations.importTemplate)
  template(@Query() { input }: ReadCall<typeof importOperations.importTemplate>) {
    return new StreamableFile(Buffer.from(this.queries.template(input.kind)), {
      type: 'text/csv; charset=utf-8',
      disposition: `attachment; filename="${input.kind}.csv"`,
    });
  }

  @Operation(importOperations.exportTable)
  export(@Query() { input, actor }: ReadCall<typeof importOperations.exportTable>) {
    return new StreamableFile(this.exports.stream(input.list, actor.personId), {
      type: 'text/csv; charset=utf-8',
      disposition: `attachment; filename="${input.list}.csv"`,
    });
  }

  @Operation(importOperations.previewImport)
  preview(@Query() call: ReadCall<typeof importOperations.previewImport>) {
    return this.queries.preview(call.input);
  }

  @Operation(importOperations.listImports)
  list(@Query() call: ReadCall<typeof importOperations.listImports>) {
    return this.queries.list(call.input);
  }

  @Operation(importOperations.uploadTable)
  upload(@Req() request: FastifyRequest, @Call() call: CommandCall) {
    return this.uploads.take(request, call);
  }

  @Operation(importOperations.applyImport)
  apply(@Call() call: CommandCall) {
    return this.runner.run(applyImport, call);
  }

  @Operation(importOperations.acceptOpeningStock)
  accept(@Call() call: CommandCall) {
    return this.runner.run(acceptOpeningStock, call);
  }
}
