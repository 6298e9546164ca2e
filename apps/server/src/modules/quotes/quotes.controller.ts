import { quoteOperations } from '@hubwright/contracts/quotes/operations';
import { Controller, Inject } from '@nestjs/common';
import { type CommandCall, CommandRunner } from '../../platform/command/runner.ts';
import { FILES, type FileStore } from '../../platform/files/store.ts';
import { Call, Operation, Query, type ReadCall } from '../../platform/http/operation.ts';
import { approveQuote } from './approve-quote.command.ts';
import { declineQuote } from './decline-quote.command.ts';
import { QuotesQueries } from './quotes.queries.ts';
import { recordSilence } from './record-silence.command.ts';
import { sendChaser } from './send-chaser.command.ts';
import { sendQuote } from './send-quote.command.ts';
import { writeQuote } from './write-quote.command.ts';

@Controller()
export class QuotesController {
  constructor(
    @Inject(CommandRunner) private readonly runner: CommandRunner,
    @Inject(QuotesQueries) private readonly queries: QuotesQueries,
    @Inject(FILES) private readonly files: FileStore,
  ) {}

  @Operation(quoteOperations.listQuotes)
  list(@Query() call: ReadCall<typeof quoteOperations.listQuotes>) {
    return this.queries.list(call.input);
  }

  @Operation(quoteOperations.quote)
  one(@Query() call: ReadCall<typeof quoteOperations.quote>) {
    return this.queries.one(call.input.quoteId);
  }

  @Operation(quoteOperations.quoteDocument)
  document(@Query() call: ReadCall<typeof quoteOperations.quoteDocument>) {
    return this.queries.document(call.input.quoteId);
  }

  @Operation(quoteOperations.priceWork)
  price(@Query() call: ReadCall<typeof quoteOperations.priceWork>) {
    return this.queries.price(call.input);
  }

  @Operation(quoteOperations.overdueAnswers)
  overdue(@Query() call: ReadCall<typeof quoteOperations.overdueAnswers>) {
    return this.queries.overdue(call.input);
  }

  @Operation(quoteOperations.writeQuote)
  write(@Call() call: CommandCall) {
    return this.runner.run(writeQuote, call);
  }

  @Operation(quoteOperations.sendQuote)
  send(@Call() call: CommandCall) {
    return this.runner.run(sendQuote(this.files), call);
  }

  @Operation(quoteOperations.approveQuote)
  approve(@Call() call: CommandCall) {
    return this.runner.run(approveQuote, call);
  }

  @Operation(quoteOperations.declineQuote)
  decline(@Call() call: CommandCall) {
    return this.runner.run(declineQuote, call);
  }

  @Operation(quoteOperations.recordSilence)
  silence(@Call() call: CommandCall) {
    return this.runner.run(recordSilence, call);
  }

  @Operation(quoteOperations.sendChaser)
  chaser(@Call() call: CommandCall) {
    return this.runner.run(sendChaser, call);
  }
}
