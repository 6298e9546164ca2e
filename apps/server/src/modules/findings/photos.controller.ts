import { fileOperations } from '@hubwright/contracts/files/operations';
import { Controller, Inject, Req, Res } from '@nestjs/common';
import type { FastifyReply, FastifyRequest } from 'fastify';
import { type CommandCall, CommandRunner } from '../../platform/command/runner.ts';
import { sendFile } from '../../platform/files/send-file.ts';
import { FILES, type FileStore } from '../../platform/files/store.ts';
import { Call, Operation, Query, type ReadCall } from '../../platform/http/operation.ts';
import { addConditionPhoto, addFindingPhoto, addStepPhoto, addTravelerPhoto } from './add-photo.command.ts';
import { PhotoQueries } from './photos.queries.ts';
import { strikePhoto } from './strike-photo.command.ts';

@Controller()
export class PhotosController {
  constructor(
    @Inject(CommandRunner) private readonly runner: CommandRunner,
    @Inject(PhotoQueries) private readonly queries: PhotoQueries,
    @Inject(FILES) private readonly files: FileStore,
  ) {}

  @Operation(fileOperations.listPhotos)
  list(@Query() call: ReadCall<typeof fileOperations.listPhotos>) {
    return this.queries.list(call.input);
  }

  @Operation(fileOperations.photoFile)
  async file(
    @Query() call: ReadCall<typeof fileOperations.photoFile>,
    @Req() request: FastifyRequest,
    @Res() reply: FastifyReply,
  ) {
    return sendFile({ request, reply }, this.files, await this.queries.file(call.input));
  }

  @Operation(fileOperations.photoThumbnail)
  async thumbnail(
    @Query() call: ReadCall<typeof fileOperations.photoThumbnail>,
    @Req() request: FastifyRequest,
    @Res() reply: FastifyReply,
  ) {
    return sendFile({ request, reply }, this.files, await this.queries.thumbnail(call.input));
  }

  @Operation(fileOperations.addPhoto)
  addToFinding(@Call() call: CommandCall) {
    return this.runner.run(addFindingPhoto(this.files), call);
  }

  @Operation(fileOperations.addTravelerPhoto)
  addToTraveler(@Call() call: CommandCall) {
    return this.runner.run(addTravelerPhoto(this.files), call);
  }

  @Operation(fileOperations.addStepPhoto)
  addToStep(@Call() call: CommandCall) {
    return this.runner.run(addStepPhoto(this.files), call);
  }

  @Operation(fileOperations.addConditionPhoto)
  addToArrival(@Call() call: CommandCall) {
    return this.runner.run(addConditionPhoto(this.files), call);
  }

  @Operation(fileOperations.strikePhoto)
  strike(@Call() call: CommandCall) {
    return this.runner.run(strikePhoto, call);
  }
}
