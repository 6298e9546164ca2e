import { fleetTableOperations as op } from '@hubwright/contracts/imports/fleet-operations';
import { Controller, Inject, Req, StreamableFile } from '@nestjs/common';
import type { FastifyRequest } from 'fastify';
import { type CommandCall, CommandRunner } from '../../platform/command/runner.ts';
import { Call, Operation, Query, type ReadCall } from '../../platform/http/operation.ts';
import { TableUploads } from '../imports/public.ts';
import { applyFleetTable } from './apply-fleet-table.command.ts';
import { FleetTableQueries } from './fleet-tables.queries.ts';
import { stageFleetTable } from './stage-fleet-table.command.ts';

@Controller()
export class FleetTablesController {
  constructor(
    @Inject(CommandRunner) private readonly runner: CommandRunner,
    @Inject(FleetTableQueries) private readonly queries: FleetTableQueries,
    @Inject(TableUploads) private readonly uploads: TableUploads,
  ) {}

  @Operation(op.fleetTableTemplate)
  template(@Query() { input }: ReadCall<typeof op.fleetTableTemplate>) {
    return new StreamableFile(Buffer.from(this.queries.template(input.kind)), {
      type: 'text/csv; charset=utf-8',
      disposition: `attachment; filename="${input.kind}.csv"`,
    });
  }

  @Operation(op.previewFleetTable)
  preview(@Query() call: ReadCall<typeof op.previewFleetTable>) {
    return this.queries.preview(call.input);
  }

  @Operation(op.listFleetTables)
  list(@Query() call: ReadCall<typeof op.listFleetTables>) {
    return this.queries.list(call.input);
  }

  @Operation(op.uploadFleetTable)
  upload(@Req() request: FastifyRequest, @Call() call: CommandCall) {
    return this.uploads.taken(request, call, (table, sent) => this.runner.run(stageFleetTable(table), sent));
  }

  @Operation(op.applyFleetTable)
  apply(@Call() call: CommandCall) {
    return this.runner.run(applyFleetTable, call);
  }
}
