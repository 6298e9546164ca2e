import { benchLinkOperations } from '@hubwright/contracts/governor-tests/link-operations';
import { useQuery } from '@tanstack/react-query';
import { useState } from 'react';
import { useCommand } from '../../api/command.ts';
import { useMay } from '../../api/me.ts';
import { Button } from '../../ui/Button.tsx';
import { CommandForm } from '../../ui/CommandForm.tsx';
import { Dialog } from '../../ui/Dialog.tsx';
import { TextField } from '../../ui/TextField.tsx';
import { say } from '../../ui/toasts.tsx';
import { linkQuery } from './governor.ts';

/** Where a bench sends its readings from, and how to change it. */
export function LinkBench({ instrumentId, tag }: { instrumentId: string; tag: string }) {
  const link = useQuery(linkQuery(instrumentId)).data;
  const mayLink = useMay(benchLinkOperations.linkBench);
  const set = useCommand(benchLinkOperations.linkBench);
  const unset = useCommand(benchLinkOperations.unlinkBench);
  const [isOpen, setOpen] = useState(false);
  const [host, setHost] = useState('');
  const [port, setPort] = useState('');
  if (!link) return null;
  const close = () => setOpen(false);
  return (
    <div className="stack tight">
      <p>
        {link.host === null ? 'It sends no readings.' : `It sends readings from ${link.host}, port ${link.port}.`}{' '}
        <span className="soft small">
          One JSON object a line over TCP: at, channel, value, unit. Readings are offered to a run and taken by hand.
        </span>
      </p>
      {mayLink ? (
        <div className="row">
          <Button onPress={() => setOpen(true)}>
            {link.host === null ? 'Enter its address' : 'Change its address'}
          </Button>
          {link.host === null ? null : (
            <Button
              weight="quiet"
              onPress={() => unset.mutate({ input: { instrumentId }, version: link.version })}
              isPending={unset.isPending}
            >
              It sends nothing any more
            </Button>
          )}
        </div>
      ) : null}
      <Dialog title={`Address of ${tag}`} isOpen={isOpen} onClose={close}>
        <CommandForm
          problem={set.error}
          isPending={set.isPending}
          submit="Keep the address"
          onCancel={close}
          onSubmit={() =>
            set.mutate(
              { input: { instrumentId, host, port: Number(port) }, version: link.version },
              {
                onSuccess: () => {
                  say(`${tag} sends from ${host}.`);
                  close();
                },
              },
            )
          }
        >
          <TextField
            name="host"
            label="Address"
            hint="In numbers, inside the shop: 192.168.1.20"
            value={host}
            onChange={setHost}
            isCode
            isRequired
          />
          <TextField name="port" label="Port" inputMode="numeric" value={port} onChange={setPort} isRequired />
        </CommandForm>
      </Dialog>
    </div>
  );
}
