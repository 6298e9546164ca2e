import { trainingOperations } from '@hubwright/contracts/people/training-operations';
import { Controller, Inject, Req, Res } from '@nestjs/common';
import type { FastifyReply, FastifyRequest } from 'fastify';
import { type CommandCall, CommandRunner } from '../../platform/command/runner.ts';
import { sendFile } from '../../platform/files/send-file.ts';
import { FILES, type FileStore } from '../../platform/files/store.ts';
import { Call, Operation, Query, type ReadCall } from '../../platform/http/operation.ts';
import { correctTraining } from './correct-training.command.ts';
import { logTraining } from './log-training.command.ts';
import { setInspectionList } from './set-inspection-list.command.ts';
import { TrainingQueries } from './training.queries.ts';
import { addTrainingItem, changeTrainingItem } from './training-items.command.ts';

/** Training, supervision, and who may inspect. */
@Controller()
export class TrainingController {
  constructor(
    @Inject(CommandRunner) private readonly runner: CommandRunner,
    @Inject(TrainingQueries) private readonly queries: TrainingQueries,
    @Inject(FILES) private readonly files: FileStore,
  ) {}

  @Operation(trainingOperations.listTrainingItems)
  items() {
    return this.queries.items();
  }

  @Operation(trainingOperations.addTrainingItem)
  addItem(@Call() call: CommandCall) {
    return this.runner.run(addTrainingItem, call);
  }

  @Operation(trainingOperations.changeTrainingItem)
  changeItem(@Call() call: CommandCall) {
    return this.runner.run(changeTrainingItem, call);
  }

  @Operation(trainingOperations.logTraining)
  log(@Call() call: CommandCall) {
    return this.runner.run(logTraining(this.files), call);
  }

  @Operation(trainingOperations.correctTraining)
  correct(@Call() call: CommandCall) {
    return this.runner.run(correctTraining(this.files), call);
  }

  @Operation(trainingOperations.trainingLog)
  logOf(@Query() call: ReadCall<typeof trainingOperations.trainingLog>) {
    return this.queries.log(call.input);
  }

  @Operation(trainingOperations.ownTraining)
  own(@Query() call: ReadCall<typeof trainingOperations.ownTraining>) {
    return this.queries.log({ personId: call.actor.personId });
  }

  @Operation(trainingOperations.trainingPaper)
  async paper(
    @Query() call: ReadCall<typeof trainingOperations.trainingPaper>,
    @Req() request: FastifyRequest,
    @Res() reply: FastifyReply,
  ) {
    return sendFile({ request, reply }, this.files, await this.queries.paper(call.input));
  }

  @Operation(trainingOperations.trainingDue)
  due(@Query() call: ReadCall<typeof trainingOperations.trainingDue>) {
    return this.queries.due(call.input);
  }

  @Operation(trainingOperations.inspectionLists)
  inspectionLists() {
    return this.queries.inspectionLists();
  }

  @Operation(trainingOperations.setInspectionList)
  setInspectionList(@Call() call: CommandCall) {
    return this.runner.run(setInspectionList, call);
  }

  @Operation(trainingOperations.supervision)
  supervision(@Query() call: ReadCall<typeof trainingOperations.supervision>) {
    return this.queries.supervision(call.input, call.actor);
  }
}
