import { mediaOperations } from '@hubwright/contracts/peening/media-operations';
import { peeningPaperOperations } from '@hubwright/contracts/peening/paper-operations';
import { Controller, Inject } from '@nestjs/common';
import { type CommandCall, CommandRunner } from '../../platform/command/runner.ts';
import { Call, Operation, Query, type ReadCall } from '../../platform/http/operation.ts';
import { addMedia } from './add-media.command.ts';
import { checkMedia } from './check-media.command.ts';
import { decideMediaReview } from './decide-media-review.command.ts';
import { MediaQueries } from './media.queries.ts';
import { PeeningPaperQueries } from './paper.queries.ts';
import { takeOutMedia } from './take-out-media.command.ts';

@Controller()
export class MediaController {
  constructor(
    @Inject(CommandRunner) private readonly runner: CommandRunner,
    @Inject(MediaQueries) private readonly queries: MediaQueries,
    @Inject(PeeningPaperQueries) private readonly paper: PeeningPaperQueries,
  ) {}

  @Operation(mediaOperations.listPeeningMedia)
  media(@Query() call: ReadCall<typeof mediaOperations.listPeeningMedia>) {
    return this.queries.media(call.input);
  }

  @Operation(mediaOperations.addPeeningMedia)
  add(@Call() call: CommandCall) {
    return this.runner.run(addMedia, call);
  }

  @Operation(mediaOperations.checkPeeningMedia)
  check(@Call() call: CommandCall) {
    return this.runner.run(checkMedia, call);
  }

  @Operation(mediaOperations.takeOutPeeningMedia)
  takeOut(@Call() call: CommandCall) {
    return this.runner.run(takeOutMedia, call);
  }

  @Operation(mediaOperations.listMediaReviews)
  reviews(@Query() call: ReadCall<typeof mediaOperations.listMediaReviews>) {
    return this.queries.reviews(call.input);
  }

  @Operation(mediaOperations.decideMediaReview)
  decide(@Call() call: CommandCall) {
    return this.runner.run(decideMediaReview, call);
  }

  @Operation(peeningPaperOperations.peeningLotPdf)
  lotPdf(@Query() call: ReadCall<typeof peeningPaperOperations.peeningLotPdf>) {
    return this.paper.lot(call.input);
  }

  @Operation(peeningPaperOperations.peeningSetupPdf)
  setupPdf(@Query() call: ReadCall<typeof peeningPaperOperations.peeningSetupPdf>) {
    return this.paper.setup(call.input);
  }
}
