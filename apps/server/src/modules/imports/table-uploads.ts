import { readFile } from 'node:fs/promises';
import { join } from 'node:path';
import type { importOperations } from '@hubwright/contracts/imports/operations';
import type { Reply } from '@hubwright/contracts/operation';
import { Problem } from '@hubwright/contracts/problems';
import { Inject, Injectable, type OnApplicationShutdown } from '@nestjs/common';
import type { FastifyRequest } from 'fastify';
import { type CommandCall, CommandRunner } from '../../platform/command/runner.ts';
import { receiveFile } from '../../platform/files/receive-file.ts';
import { FILES, type FileStore } from '../../platform/files/store.ts';
import { Slots } from '../../platform/http/slots.ts';
import { WorkerThread } from '../../platform/jobs/worker.ts';
import type { TableRead } from './read-table.ts';
import { type ReadTable, stageTable } from './stage-table.command.ts';

/** Takes tables in: received a piece at a time, read one after the other on a thread of their own, kept as rows of text. */
@Injectable()
export class TableUploads implements OnApplicationShutdown {
  private readonly slots = new Slots(4, 2, 'tables are being read');
  private readonly patience = { silent: 20_000, whole: 180_000 };
  private readonly worker = new WorkerThread<Uint8Array, TableRead>(
    { name: 'read-table', beside: import.meta.url },
    { megabytes: 768, queue: 4 },
  );

  constructor(
    @Inject(FILES) private readonly files: FileStore,
    @Inject(CommandRunner) private readonly runner: CommandRunner,
  ) {}

  /** The file itself is not kept: its hash and every row of it are. */
  take(request: FastifyRequest, call: CommandCall): Promise<Reply<typeof importOperations.uploadTable>> {
    return this.taken(request, call, (table, sent) => this.runner.run(stageTable(table), sent));
  }

  /** Receives and reads a file; `stage` is given its rows, and the call with the file's hash among its input. */
  async taken<T>(
    request: FastifyRequest,
    call: CommandCall,
    stage: (table: ReadTable, sent: CommandCall) => Promise<T>,
  ): Promise<T> {
    const leave = this.slots.enter(call.actor.personId);
    try {
      return await this.files.workplace(async (folder) => {
        const path = join(folder, 'received');
        const { sha256 } = await receiveFile(request.raw, path, this.patience);
        const table = await this.read(await readFile(path));
        return stage(table, { ...call, input: { ...(call.input as object), sha256 } });
      });
    } finally {
      leave();
    }
  }

  async onApplicationShutdown(): Promise<void> {
    await this.worker.close();
  }

  private async read(bytes: Uint8Array): Promise<Extract<TableRead, { header: string[] }>> {
    const table = await this.worker.run(bytes);
    if ('refused' in table) throw new Problem(table.refused, table.detail);
    return table;
  }
}
