import { governorOperations } from '@hubwright/contracts/governor-tests/operations';
import { Controller, Inject } from '@nestjs/common';
import { type CommandCall, CommandRunner } from '../../platform/command/runner.ts';
import { Call, Operation, Query, type ReadCall } from '../../platform/http/operation.ts';
import { beginRun } from './begin-run.command.ts';
import { BenchStreams } from './bench-streams.ts';
import { CertificateQueries } from './certificate.queries.ts';
import { endRun } from './end-run.command.ts';
import { importReadings } from './import-readings.command.ts';
import { issueProgram } from './issue-program.command.ts';
import { ProgramQueries } from './programs.queries.ts';
import { recordAdjustment } from './record-adjustment.command.ts';
import { RunQueries } from './runs.queries.ts';
import { takeInstrumentReading } from './take-instrument-reading.command.ts';
import { takeReading } from './take-reading.command.ts';

@Controller()
export class GovernorTestsController {
  constructor(
    @Inject(CommandRunner) private readonly runner: CommandRunner,
    @Inject(ProgramQueries) private readonly programs: ProgramQueries,
    @Inject(RunQueries) private readonly runs: RunQueries,
    @Inject(CertificateQueries) private readonly certificates: CertificateQueries,
    @Inject(BenchStreams) private readonly streams: BenchStreams,
  ) {}

  @Operation(governorOperations.listGovernorPrograms)
  listPrograms(@Query() call: ReadCall<typeof governorOperations.listGovernorPrograms>) {
    return this.programs.list(call.input);
  }

  @Operation(governorOperations.issueGovernorProgram)
  issue(@Call() call: CommandCall) {
    return this.runner.run(issueProgram, call);
  }

  @Operation(governorOperations.waitingForGovernorBench)
  waiting() {
    return this.runs.waiting();
  }

  @Operation(governorOperations.listGovernorRuns)
  list(@Query() call: ReadCall<typeof governorOperations.listGovernorRuns>) {
    return this.runs.list(call.input);
  }

  @Operation(governorOperations.governorRun)
  one(@Query() call: ReadCall<typeof governorOperations.governorRun>) {
    return this.runs.one(call.input);
  }

  @Operation(governorOperations.beginGovernorRun)
  begin(@Call() call: CommandCall) {
    return this.runner.run(beginRun, call);
  }

  @Operation(governorOperations.takeGovernorReading)
  take(@Call() call: CommandCall) {
    return this.runner.run(takeReading, call);
  }

  @Operation(governorOperations.importGovernorReadings)
  import(@Call() call: CommandCall) {
    return this.runner.run(importReadings, call);
  }

  @Operation(governorOperations.takeInstrumentReading)
  takeFromInstrument(@Call() call: CommandCall) {
    return this.runner.run(takeInstrumentReading(this.streams), call);
  }

  @Operation(governorOperations.recordGovernorAdjustment)
  adjust(@Call() call: CommandCall) {
    return this.runner.run(recordAdjustment, call);
  }

  @Operation(governorOperations.endGovernorRun)
  end(@Call() call: CommandCall) {
    return this.runner.run(endRun, call);
  }

  @Operation(governorOperations.governorCertificatePdf)
  certificate(@Query() call: ReadCall<typeof governorOperations.governorCertificatePdf>) {
    return this.certificates.print(call.input);
  }
}
