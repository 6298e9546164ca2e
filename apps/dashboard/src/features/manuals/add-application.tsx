import { manualOperations } from '@hubwright/contracts/manuals/operations';
import { useState } from 'react';
import { useCommand } from '../../api/command.ts';
import { CommandForm } from '../../ui/CommandForm.tsx';
import { Dialog } from '../../ui/Dialog.tsx';
import { Select } from '../../ui/Select.tsx';
import { TextField } from '../../ui/TextField.tsx';
import { say } from '../../ui/toasts.tsx';
import type { Model } from './manuals.ts';

const positions = (['single', 'left', 'right', 'center'] as const).map((value) => ({ value, text: value }));

/** `low blade angle = 12.4 ± 0.2 degrees`, one a line, to settings by name. */
function settingsIn(text: string): Record<string, string> {
  const lines = text.split('\n').filter((line) => line.trim() !== '');
  return Object.fromEntries(
    lines.map((line) => {
      const [name = '', ...value] = line.split('=');
      return [name.trim(), value.join('=').trim()];
    }),
  );
}

/** An aircraft, engine and position the model is approved for, with the settings its manual prints for it. */
export function AddApplication({ model, onClose }: { model: Model; onClose: () => void }) {
  const add = useCommand(manualOperations.addApplication);
  const [draft, setDraft] = useState({ airframe: '', engine: '', approval: '' });
  const [position, setPosition] = useState<(typeof positions)[number]['value']>('single');
  const [settings, setSettings] = useState('');
  const put = (key: keyof typeof draft) => (text: string) => setDraft({ ...draft, [key]: text });
  const send = () =>
    add.mutate(
      { input: { ...draft, position, modelId: model.id, settings: settingsIn(settings) } },
      {
        onSuccess: () => {
          say(`${model.designation} can be booked in for ${draft.airframe}.`);
          onClose();
        },
      },
    );
  return (
    <Dialog title={`What ${model.designation} is fitted to`} isOpen onClose={onClose}>
      <CommandForm
        problem={add.error}
        isPending={add.isPending}
        submit="Add the aircraft type"
        onSubmit={send}
        onCancel={onClose}
      >
        <TextField name="airframe" label="Airframe" value={draft.airframe} onChange={put('airframe')} isRequired />
        <TextField name="engine" label="Engine" value={draft.engine} onChange={put('engine')} isRequired />
        <Select
          name="position"
          label="Position"
          value={position}
          onChange={setPosition}
          choices={positions}
          isRequired
        />
        <TextField
          name="approval"
          label="Approved by"
          hint="The data that approves this combination"
          value={draft.approval}
          onChange={put('approval')}
          isRequired
        />
        <TextField
          name="settings"
          label="Angles and settings"
          hint="As the manual prints them, one a line: low blade angle = 12.4 ± 0.2 degrees"
          lines={4}
          value={settings}
          onChange={setSettings}
        />
      </CommandForm>
    </Dialog>
  );
}
