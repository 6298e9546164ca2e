import { buyingOperations } from '@hubwright/contracts/purchasing/buying-operations';
import { orderOperations } from '@hubwright/contracts/purchasing/order-operations';
import { Controller, Inject } from '@nestjs/common';
import { Operation, Query, type ReadCall } from '../../platform/http/operation.ts';
import { BuyingQueries } from './buying.queries.ts';
import { ChaseQueries } from './chase.queries.ts';

@Controller()
export class BuyingController {
  constructor(
    @Inject(BuyingQueries) private readonly buying: BuyingQueries,
    @Inject(ChaseQueries) private readonly chase: ChaseQueries,
  ) {}

  @Operation(buyingOperations.listSuggestions)
  listSuggestions(@Query() call: ReadCall<typeof buyingOperations.listSuggestions>) {
    return this.buying.list(call.input);
  }

  @Operation(orderOperations.listToChase)
  listToChase(@Query() call: ReadCall<typeof orderOperations.listToChase>) {
    return this.chase.list(call.input);
  }
}
