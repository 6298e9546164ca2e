import { fileOperations } from '@hubwright/contracts/files/operations';
import { Controller, Inject, Req } from '@nestjs/common';
import type { FastifyRequest } from 'fastify';
import type { CommandCall } from '../command/runner.ts';
import { Call, Operation } from '../http/operation.ts';
import { Uploads } from './uploads.ts';

/** Files come in here; the departments say what they show. */
@Controller()
export class FilesController {
  constructor(@Inject(Uploads) private readonly uploads: Uploads) {}

  @Operation(fileOperations.uploadFile)
  upload(@Req() request: FastifyRequest, @Call() call: CommandCall) {
    return this.uploads.take(request, call);
  }
}
