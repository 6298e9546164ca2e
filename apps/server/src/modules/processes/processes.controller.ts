import { processOperations } from '@hubwright/contracts/processes/operations';
import { studyOperations } from '@hubwright/contracts/processes/study-operations';
import { Controller, Inject } from '@nestjs/common';
import { type CommandCall, CommandRunner } from '../../platform/command/runner.ts';
import { Call, Operation, Query, type ReadCall } from '../../platform/http/operation.ts';
import { addInstrument } from './add-instrument.command.ts';
import { calibrateInstrument } from './calibrate-instrument.command.ts';
import { InstrumentQueries } from './instruments.queries.ts';
import { recordStudy } from './record-study.command.ts';
import { StudyQueries } from './studies.queries.ts';

@Controller()
export class ProcessesController {
  constructor(
    @Inject(CommandRunner) private readonly runner: CommandRunner,
    @Inject(InstrumentQueries) private readonly queries: InstrumentQueries,
    @Inject(StudyQueries) private readonly studies: StudyQueries,
  ) {}

  @Operation(processOperations.listInstruments)
  list(@Query() call: ReadCall<typeof processOperations.listInstruments>) {
    return this.queries.list(call.input);
  }

  @Operation(processOperations.listCalibrations)
  calibrations(@Query() call: ReadCall<typeof processOperations.listCalibrations>) {
    return this.queries.calibrations(call.input.instrumentId);
  }

  @Operation(processOperations.addInstrument)
  add(@Call() call: CommandCall) {
    return this.runner.run(addInstrument, call);
  }

  @Operation(processOperations.calibrateInstrument)
  calibrate(@Call() call: CommandCall) {
    return this.runner.run(calibrateInstrument, call);
  }

  @Operation(studyOperations.listGaugeStudies)
  listStudies(@Query() call: ReadCall<typeof studyOperations.listGaugeStudies>) {
    return this.studies.list(call.input.instrumentId);
  }

  @Operation(studyOperations.recordGaugeStudy)
  recordStudy(@Call() call: CommandCall) {
    return this.runner.run(recordStudy, call);
  }
}
