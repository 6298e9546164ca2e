import { join } from 'node:path';
import type { fileOperations } from '@hubwright/contracts/files/operations';
import type { Reply } from '@hubwright/contracts/operation';
import { Inject, Injectable } from '@nestjs/common';
import type { FastifyRequest } from 'fastify';
import { type CommandCall, CommandRunner } from '../command/runner.ts';
import { Slots } from '../http/slots.ts';
import { finishFile } from './finish-file.ts';
import { receiveFile } from './receive-file.ts';
import { stageFile } from './stage-file.command.ts';
import { FILES, type FileStore } from './store.ts';

/** Takes files in: received a piece at a time, looked at one after the other, then put where they wait for a record. */
@Injectable()
export class Uploads {
  private readonly slots = new Slots(8, 3, 'files are being received');
  private readonly patience = { silent: 20_000, whole: 180_000 };
  private last: Promise<unknown> = Promise.resolve();

  constructor(
    @Inject(FILES) private readonly files: FileStore,
    @Inject(CommandRunner) private readonly runner: CommandRunner,
  ) {}

  /** Whatever goes wrong, nothing is left of the file. */
  async take(request: FastifyRequest, call: CommandCall): Promise<Reply<typeof fileOperations.uploadFile>> {
    const leave = this.slots.enter(call.actor.personId);
    try {
      return await this.files.workplace(async (folder) => {
        const path = join(folder, 'received');
        const received = await receiveFile(request.raw, path, this.patience);
        const finished = await this.inTurn(() => finishFile(path, folder));
        return this.runner.run(stageFile(this.files, finished), { ...call, input: received });
      });
    } finally {
      leave();
    }
  }

  /** Pictures cost much memory for a moment: one is drawn at a time. */
  private inTurn<T>(job: () => Promise<T>): Promise<T> {
    const turn = this.last.then(job, job);
    this.last = turn.catch(() => undefined);
    return turn;
  }
}
