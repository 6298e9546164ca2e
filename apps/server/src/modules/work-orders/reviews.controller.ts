import { reviewOperations } from '@hubwright/contracts/work-orders/review-operations';
import { Controller, Inject } from '@nestjs/common';
import { type CommandCall, CommandRunner } from '../../platform/command/runner.ts';
import { Call, Operation, Query, type ReadCall } from '../../platform/http/operation.ts';
import { decideReview } from './decide-review.command.ts';
import { ReviewQueries } from './reviews.queries.ts';

@Controller()
export class ReviewsController {
  constructor(
    @Inject(CommandRunner) private readonly runner: CommandRunner,
    @Inject(ReviewQueries) private readonly reviews: ReviewQueries,
  ) {}

  @Operation(reviewOperations.listCalibrationReviews)
  list(@Query() call: ReadCall<typeof reviewOperations.listCalibrationReviews>) {
    return this.reviews.list(call.input);
  }

  @Operation(reviewOperations.decideCalibrationReview)
  decide(@Call() call: CommandCall) {
    return this.runner.run(decideReview, call);
  }
}
