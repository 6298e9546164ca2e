import { offerOperations } from '@hubwright/contracts/purchasing/offer-operations';
import { Controller, Inject } from '@nestjs/common';
import { type CommandCall, CommandRunner } from '../../platform/command/runner.ts';
import { Call, Operation, Query, type ReadCall } from '../../platform/http/operation.ts';
import { OfferQueries } from './offer.queries.ts';
import { setBuyingCosts } from './set-buying-costs.command.ts';
import { setOffer } from './set-offer.command.ts';

@Controller()
export class OfferController {
  constructor(
    @Inject(CommandRunner) private readonly runner: CommandRunner,
    @Inject(OfferQueries) private readonly queries: OfferQueries,
  ) {}

  @Operation(offerOperations.listOffers)
  listOffers(@Query() call: ReadCall<typeof offerOperations.listOffers>) {
    return this.queries.list(call.input);
  }

  @Operation(offerOperations.setOffer)
  setOffer(@Call() call: CommandCall) {
    return this.runner.run(setOffer, call);
  }

  @Operation(offerOperations.buyingCosts)
  buyingCosts() {
    return this.queries.costs();
  }

  @Operation(offerOperations.setBuyingCosts)
  setBuyingCosts(@Call() call: CommandCall) {
    return this.runner.run(setBuyingCosts, call);
  }
}
