import { reminderOperations } from '@hubwright/contracts/reminders/operations';
import { useSuspenseQuery } from '@tanstack/react-query';
import { useState } from 'react';
import { useMay } from '../../api/me.ts';
import { InstantText } from '../../format/values.tsx';
import { Button } from '../../ui/Button.tsx';
import { StateMark } from '../../ui/StateMark.tsx';
import { ReminderSettingsDialog } from './change-settings.tsx';
import { settingsQuery } from './reminders.ts';

/** Whether and when letters go, who said so and why; changed from here. */
export function ReminderSettings() {
  const settings = useSuspenseQuery(settingsQuery).data;
  const mayChange = useMay(reminderOperations.changeReminderSettings);
  const [isChanging, setChanging] = useState(false);
  const { isOn, intervals, senderEmail, since, by, reason } = settings;
  return (
    <div className="row between">
      <p>
        <StateMark state={isOn ? 'have' : 'hold'} word={isOn ? 'letters are on' : 'letters are off'} />{' '}
        {intervals.join(', ')} days before the likely date{senderEmail ? `, from ${senderEmail}` : ''}.{' '}
        {since ? (
          <span className="small soft">
            {by}, <InstantText instant={since} />: {reason}
          </span>
        ) : null}
      </p>
      {mayChange ? <Button onPress={() => setChanging(true)}>Change</Button> : null}
      {isChanging ? <ReminderSettingsDialog settings={settings} onClose={() => setChanging(false)} /> : null}
    </div>
  );
}
