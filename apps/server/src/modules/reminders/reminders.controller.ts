import { reminderOperations } from '@hubwright/contracts/reminders/operations';
import { Controller, Inject } from '@nestjs/common';
import { type CommandCall, CommandRunner } from '../../platform/command/runner.ts';
import { Call, Operation, Query, type ReadCall } from '../../platform/http/operation.ts';
import { Mailer } from '../../platform/mail/mailer.ts';
import { changeReminderSettings } from './change-reminder-settings.command.ts';
import { markLetterPosted } from './mark-letter-posted.command.ts';
import { ReminderQueries } from './reminders.queries.ts';
import { resumeLetter } from './resume-letter.command.ts';
import { sendReminders } from './send-reminders.command.ts';
import { setReminderChoice } from './set-reminder-choice.command.ts';
import { withdrawLetter } from './withdraw-letter.command.ts';

@Controller()
export class RemindersController {
  constructor(
    @Inject(CommandRunner) private readonly runner: CommandRunner,
    @Inject(ReminderQueries) private readonly queries: ReminderQueries,
    @Inject(Mailer) private readonly mailer: Mailer,
  ) {}

  @Operation(reminderOperations.reminderSettings)
  settings() {
    return this.queries.settings();
  }

  @Operation(reminderOperations.changeReminderSettings)
  changeSettings(@Call() call: CommandCall) {
    return this.runner.run(changeReminderSettings, call);
  }

  @Operation(reminderOperations.reminderChoice)
  choice(@Query() call: ReadCall<typeof reminderOperations.reminderChoice>) {
    return this.queries.choice(call.input.customerId);
  }

  @Operation(reminderOperations.setReminderChoice)
  setChoice(@Call() call: CommandCall) {
    return this.runner.run(setReminderChoice, call);
  }

  @Operation(reminderOperations.dueLetters)
  due(@Query() call: ReadCall<typeof reminderOperations.dueLetters>) {
    return this.queries.due(call.input);
  }

  @Operation(reminderOperations.previewLetter)
  preview(@Query() call: ReadCall<typeof reminderOperations.previewLetter>) {
    return this.queries.preview(call.input.customerId);
  }

  @Operation(reminderOperations.previewLetterPdf)
  previewPdf(@Query() call: ReadCall<typeof reminderOperations.previewLetterPdf>) {
    return this.queries.previewPdf(call.input.customerId);
  }

  @Operation(reminderOperations.sendReminders)
  send(@Call() call: CommandCall) {
    return this.runner.run(sendReminders(this.mailer.printOnlyBecause), call);
  }

  @Operation(reminderOperations.listLetters)
  letters(@Query() call: ReadCall<typeof reminderOperations.listLetters>) {
    return this.queries.letters(call.input);
  }

  @Operation(reminderOperations.letterPdf)
  letterPdf(@Query() call: ReadCall<typeof reminderOperations.letterPdf>) {
    return this.queries.letterPdf(call.input.letterId);
  }

  @Operation(reminderOperations.markLetterPosted)
  posted(@Call() call: CommandCall) {
    return this.runner.run(markLetterPosted, call);
  }

  @Operation(reminderOperations.resumeLetter)
  resume(@Call() call: CommandCall) {
    return this.runner.run(resumeLetter, call);
  }

  @Operation(reminderOperations.withdrawLetter)
  withdraw(@Call() call: CommandCall) {
    return this.runner.run(withdrawLetter, call);
  }
}
