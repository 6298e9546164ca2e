import { Module } from '@nestjs/common';
import { ReminderMail } from './reminder-mail.ts';
import { RemindersController } from './reminders.controller.ts';
import { ReminderQueries } from './reminders.queries.ts';

@Module({ controllers: [RemindersController], providers: [ReminderQueries, ReminderMail] })
export class RemindersModule {}
