import { peeningOperations } from '@hubwright/contracts/peening/operations';
import { Controller, Inject } from '@nestjs/common';
import { type CommandCall, CommandRunner } from '../../platform/command/runner.ts';
import { Call, Operation, Query, type ReadCall } from '../../platform/http/operation.ts';
import { addMachine } from './add-machine.command.ts';
import { breakUpLot } from './break-up-lot.command.ts';
import { closeLot } from './close-lot.command.ts';
import { peenAgain } from './peen-again.command.ts';
import { PeeningQueries } from './peening.queries.ts';
import { qualifySetup } from './qualify-setup.command.ts';
import { signLot } from './sign-lot.command.ts';
import { startLot } from './start-lot.command.ts';

@Controller()
export class PeeningController {
  constructor(
    @Inject(CommandRunner) private readonly runner: CommandRunner,
    @Inject(PeeningQueries) private readonly queries: PeeningQueries,
  ) {}

  @Operation(peeningOperations.listPeeningMachines)
  machines() {
    return this.queries.machines();
  }

  @Operation(peeningOperations.addPeeningMachine)
  addMachine(@Call() call: CommandCall) {
    return this.runner.run(addMachine, call);
  }

  @Operation(peeningOperations.qualifySetup)
  qualify(@Call() call: CommandCall) {
    return this.runner.run(qualifySetup, call);
  }

  @Operation(peeningOperations.listPeeningLots)
  lots(@Query() call: ReadCall<typeof peeningOperations.listPeeningLots>) {
    return this.queries.lots(call.input);
  }

  @Operation(peeningOperations.waitingForPeening)
  waiting() {
    return this.queries.waiting();
  }

  @Operation(peeningOperations.startPeeningLot)
  start(@Call() call: CommandCall) {
    return this.runner.run(startLot, call);
  }

  @Operation(peeningOperations.signPeeningLot)
  sign(@Call() call: CommandCall) {
    return this.runner.run(signLot, call);
  }

  @Operation(peeningOperations.closePeeningLot)
  close(@Call() call: CommandCall) {
    return this.runner.run(closeLot, call);
  }

  @Operation(peeningOperations.peenAgain)
  peenAgain(@Call() call: CommandCall) {
    return this.runner.run(peenAgain, call);
  }

  @Operation(peeningOperations.breakUpPeeningLot)
  breakUp(@Call() call: CommandCall) {
    return this.runner.run(breakUpLot, call);
  }
}
