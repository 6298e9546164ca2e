import { partOperations } from '@hubwright/contracts/inventory/part-operations';
import { useState } from 'react';
import { useCommand } from '../../api/command.ts';
import { CommandForm } from '../../ui/CommandForm.tsx';
import { Dialog } from '../../ui/Dialog.tsx';
import { NewerVersion, useSeen } from '../../ui/seen-version.tsx';
import { say } from '../../ui/toasts.tsx';
import { AlternateField } from './AlternateField.tsx';
import { AlternateLink } from './AlternateLink.tsx';
import { type LinkDraft, linkToSend, usualLink } from './alternate-words.ts';
import type { Part } from './lots.ts';

/** Which parts may stand in for this one, best first. Kits see it at once. */
export function AlternatesDialog({ part, onClose }: { part: Part; onClose: () => void }) {
  const { seen, isNewer, takeNewest } = useSeen(part);
  const change = useCommand(partOperations.setAlternates);
  const [links, setLinks] = useState<LinkDraft[]>(() =>
    part.alternates.map(({ number, twoWay, supersedes, effectivity, from }) => ({
      ...{ number, twoWay, supersedes, effectivity, from: from ?? '' },
    })),
  );
  const reorder = (numbers: readonly string[]) =>
    setLinks(numbers.map((number) => links.find((link) => link.number === number) ?? usualLink(number)));
  const send = () =>
    change.mutate(
      { input: { partId: part.id, alternates: links.map(linkToSend) }, version: seen.version },
      {
        onSuccess: () => {
          say(`What may stand in for ${part.number} is changed.`);
          onClose();
        },
      },
    );
  return (
    <Dialog title={`What may stand in for ${part.number}?`} isOpen onClose={onClose}>
      {isNewer ? <NewerVersion onTake={takeNewest} /> : null}
      <CommandForm
        problem={change.error}
        isPending={change.isPending}
        submit="Keep this order"
        onSubmit={send}
        onCancel={onClose}
      >
        <AlternateField numbers={links.map(({ number }) => number)} onChange={reorder} except={part.number} />
        {links.map((link, place) => (
          <AlternateLink
            key={link.number}
            part={part.number}
            place={place}
            link={link}
            onChange={(changed) => setLinks(links.map((each, at) => (at === place ? changed : each)))}
          />
        ))}
      </CommandForm>
    </Dialog>
  );
}
