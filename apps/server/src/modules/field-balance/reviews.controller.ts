import { fieldReviewOperations as op } from '@hubwright/contracts/field-balance/review-operations';
import { Controller, Inject } from '@nestjs/common';
import { type CommandCall, CommandRunner } from '../../platform/command/runner.ts';
import { Call, Operation, Query, type ReadCall } from '../../platform/http/operation.ts';
import { decideFieldReview } from './decide-review.command.ts';
import { FieldReviewQueries } from './reviews.queries.ts';

@Controller()
export class FieldReviewsController {
  constructor(
    @Inject(CommandRunner) private readonly runner: CommandRunner,
    @Inject(FieldReviewQueries) private readonly reviews: FieldReviewQueries,
  ) {}

  @Operation(op.listFieldReviews)
  list(@Query() call: ReadCall<typeof op.listFieldReviews>) {
    return this.reviews.list(call.input);
  }

  @Operation(op.decideFieldReview)
  decide(@Call() call: CommandCall) {
    return this.runner.run(decideFieldReview, call);
  }
}
