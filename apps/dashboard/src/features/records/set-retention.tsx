import { recordOperations } from '@hubwright/contracts/records/operations';
import { useState } from 'react';
import type { ProblemError } from '../../api/problem.ts';
import { Button } from '../../ui/Button.tsx';
import { CommandForm } from '../../ui/CommandForm.tsx';
import { Dialog } from '../../ui/Dialog.tsx';
import { SignCommand, type Signer } from '../../ui/SignCommand.tsx';
import { TextField } from '../../ui/TextField.tsx';
import { say } from '../../ui/toasts.tsx';
import type { Keeping } from './record-keeping.ts';

interface Draft {
  readonly key: number;
  readonly approval: string;
  readonly years: string;
}

/** One line per approval; the longest decides. */
export function SetRetention({ keeping, signer, onClose }: { keeping: Keeping; signer: Signer; onClose: () => void }) {
  const [rules, setRules] = useState<Draft[]>(
    keeping.retentionRules.map(({ approval, years }, key) => ({ key, approval, years: String(years) })),
  );
  const [reason, setReason] = useState('');
  const [isSigning, setSigning] = useState(false);
  const [wrong, setWrong] = useState<ProblemError | null>(null);
  const set = (key: number, change: Partial<Draft>) =>
    setRules(rules.map((rule) => (rule.key === key ? { ...rule, ...change } : rule)));
  if (isSigning) {
    return (
      <SignCommand
        op={recordOperations.setRetention}
        input={{ rules: rules.map(({ approval, years }) => ({ approval, years: Number(years) })), reason }}
        version={keeping.version}
        signer={signer}
        onClose={onClose}
        onWrongInput={(problem) => {
          setWrong(problem);
          setSigning(false);
        }}
        onSigned={() => {
          say('The new time counts from now on, for what is kept already too.');
          onClose();
        }}
      >
        {rules.map(({ key, approval, years }) => (
          <p key={key}>
            {approval}: {years} years
          </p>
        ))}
      </SignCommand>
    );
  }
  return (
    <Dialog title="How long records are kept" isOpen onClose={onClose}>
      <CommandForm
        problem={wrong}
        isPending={false}
        submit="Go on to sign"
        onSubmit={() => setSigning(true)}
        onCancel={onClose}
      >
        {rules.map(({ key, approval, years }, index) => (
          <div key={key} className="row">
            <TextField
              name={`rules/${index}/approval`}
              label="Approval"
              value={approval}
              onChange={(text) => set(key, { approval: text })}
              isRequired
            />
            <TextField
              name={`rules/${index}/years`}
              label="Years"
              size={4}
              inputMode="numeric"
              value={years}
              onChange={(text) => set(key, { years: text })}
              isRequired
            />
            {rules.length > 1 ? (
              <Button weight="quiet" onPress={() => setRules(rules.filter((rule) => rule.key !== key))}>
                Remove
              </Button>
            ) : null}
          </div>
        ))}
        <Button
          weight="quiet"
          onPress={() =>
            setRules([...rules, { key: Math.max(...rules.map(({ key }) => key)) + 1, approval: '', years: '' }])
          }
        >
          One more approval
        </Button>
        <TextField name="reason" label="Why it changes" value={reason} onChange={setReason} isRequired />
      </CommandForm>
    </Dialog>
  );
}
