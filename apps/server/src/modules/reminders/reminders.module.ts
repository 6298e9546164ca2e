import { Module } from '@nestjs/common';
import { DueDatesModule } from '../due-dates/public.ts';
import { ReminderMail } from './reminder-mail.ts';
import { RemindersController } from './reminders.controller.ts';
import { ReminderQueries } from './reminders.queries.ts';

@Module({ imports: [DueDatesModule], controllers: [RemindersController], providers: [ReminderQueries, ReminderMail] })
export class RemindersModule {}
