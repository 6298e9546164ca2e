import type { Input } from '@hubwright/contracts/operation';
import type { reminderOperations } from '@hubwright/contracts/reminders/operations';
import type { askThrough } from '../kits/public.ts';

type Ask = ReturnType<typeof askThrough>;
type Given = Omit<Input<typeof reminderOperations.changeReminderSettings>, 'reason'>;

export interface ReminderSettings extends Given {
  readonly version: number;
  readonly since: Date | null;
  readonly by: string;
  readonly reason: string;
}

/** Until somebody has set them nothing is sent. Intervals and words are common practice, no source: every shop has its own. */
const untilSet: ReminderSettings = {
  isOn: false,
  intervals: [180, 90, 30],
  senderName: '',
  senderEmail: '',
  replyTo: '',
  subject: 'Units that are likely to fall due',
  opening:
    'We keep the due dates of the units we have worked on. For those named below the likely date is near, and we write so that you can plan.',
  closing:
    'Please tell us when it suits you to send them in, or what your aircraft has flown since: a newer reading makes the date better.',
  version: 0,
  since: null,
  by: '',
  reason: '',
};

const settingsSql = `
  SELECT s.is_on AS "isOn", s.intervals, s.sender_name AS "senderName", s.sender_email AS "senderEmail", s.reply_to AS "replyTo",
    s.subject, s.opening, s.closing, s.reason, s.version, s.at AS since, p.display_name AS by
  FROM reminder_settings s JOIN people p ON p.id = s.person_id ORDER BY s.version DESC LIMIT 1`;

/** What holds now. */
export async function settingsInForce(ask: Ask): Promise<ReminderSettings> {
  return (await ask<ReminderSettings>(settingsSql, []))[0] ?? untilSet;
}

/** Why nothing goes by e-mail whatever the letter; null where it may. */
export function noMailBecause(settings: ReminderSettings, printOnlyBecause: string | null): string | null {
  if (printOnlyBecause !== null) return printOnlyBecause;
  return settings.senderEmail === '' ? 'The shop has not said which address its letters come from.' : null;
}
