import { recordOperations } from '@hubwright/contracts/records/operations';
import { Controller, Inject } from '@nestjs/common';
import { Backups } from '../../platform/backup/backups.ts';
import { type CommandCall, CommandRunner } from '../../platform/command/runner.ts';
import { Call, Operation } from '../../platform/http/operation.ts';
import { KeyFolder } from '../../platform/records/shop-key.ts';
import { erasePerson } from './erase-person.command.ts';
import { RecordsQueries } from './records.queries.ts';
import { rotateShopKey } from './rotate-shop-key.command.ts';
import { setRetention } from './set-retention.command.ts';
import { takeBackup } from './take-backup.command.ts';

@Controller()
export class RecordsController {
  constructor(
    @Inject(CommandRunner) private readonly runner: CommandRunner,
    @Inject(RecordsQueries) private readonly queries: RecordsQueries,
    @Inject(KeyFolder) private readonly keys: KeyFolder,
    @Inject(Backups) private readonly backups: Backups,
  ) {}

  @Operation(recordOperations.recordKeeping)
  keeping() {
    return this.queries.keeping();
  }

  @Operation(recordOperations.takeBackup)
  async takeBackup(@Call() call: CommandCall) {
    const reply = await this.runner.run(takeBackup(this.backups), call);
    if (!call.dryRun) this.backups.begin();
    return reply;
  }

  @Operation(recordOperations.rotateShopKey)
  rotate(@Call() call: CommandCall) {
    return this.runner.run(rotateShopKey(this.keys), call);
  }

  @Operation(recordOperations.erasePerson)
  erasePerson(@Call() call: CommandCall) {
    return this.runner.run(erasePerson, call);
  }

  @Operation(recordOperations.setRetention)
  setRetention(@Call() call: CommandCall) {
    return this.runner.run(setRetention, call);
  }
}
