import { allocationOperations, type Likelihood } from '@hubwright/contracts/kits/allocation-operations';
import type { Reply } from '@hubwright/contracts/operation';
import { useSuspenseQuery } from '@tanstack/react-query';
import { useState } from 'react';
import { useCommand } from '../../api/command.ts';
import { useMay } from '../../api/me.ts';
import { queryFor } from '../../api/query.ts';
import { InstantText } from '../../format/values.tsx';
import { Button } from '../../ui/Button.tsx';
import { CommandForm } from '../../ui/CommandForm.tsx';
import { DecimalField } from '../../ui/DecimalField.tsx';
import { Dialog } from '../../ui/Dialog.tsx';
import { Select } from '../../ui/Select.tsx';
import { NewerVersion, useSeen } from '../../ui/seen-version.tsx';
import { TextField } from '../../ui/TextField.tsx';
import { say } from '../../ui/toasts.tsx';

type Policy = Reply<typeof allocationOperations.allocationPolicy>;
const orders = [
  { value: 'need-date', text: 'the kit needed first, then the higher priority' },
  { value: 'priority', text: 'the higher priority, then the kit needed first' },
] as const;
type OpenAnswer = Policy['odds'][number]['answer'];
const answers: readonly { field: keyof Likelihood; label: string; unit: string }[] = [
  { field: 'noPriceYet', label: 'No price is with the customer yet', unit: '%' },
  { field: 'estimateOut', label: 'Estimate with the customer', unit: '%' },
  { field: 'quoteOut', label: 'Quote with the customer', unit: '%' },
  { field: 'oldAfterDays', label: 'Without an answer an offer is old after', unit: 'days' },
  { field: 'estimateOld', label: 'Old estimate', unit: '%' },
  { field: 'quoteOld', label: 'Old quote', unit: '%' },
  { field: 'silent', label: 'Silence is on record', unit: '%' },
];

const oddsWords: Record<OpenAnswer, string> = {
  noPriceYet: 'no price with the customer yet',
  estimateOut: 'estimate out',
  estimateOld: 'old estimate',
  quoteOut: 'quote out',
  quoteOld: 'old quote',
  extraOut: 'extra work beyond the approved',
  silent: 'silence on record',
};

/** What was said, and what the shop's own answers make of it. */
function Odds({ odds }: { odds: Policy['odds'] }) {
  return (
    <details className="small">
      <summary>How likely work is that is not approved yet</summary>
      <ul className="lines">
        {odds.map(({ answer, percent, said, yes, asked }) => (
          <li key={answer}>
            <span>
              {oddsWords[answer]}: <strong>{percent} %</strong>{' '}
              <span className="soft">
                {asked === 0
                  ? `as the rule says; no answer on record`
                  : `the rule says ${said} %, ${yes} of ${asked} answered yes`}
              </span>
            </span>
          </li>
        ))}
      </ul>
    </details>
  );
}

function PolicyDialog({ policy, onClose }: { policy: Policy; onClose: () => void }) {
  const { seen, isNewer, takeNewest } = useSeen(policy);
  const change = useCommand(allocationOperations.changeAllocationPolicy);
  const [order, setOrder] = useState(policy.order);
  const [likely, setLikely] = useState(
    Object.fromEntries(answers.map(({ field }) => [field, String(policy.likelihood[field])])),
  );
  const [reason, setReason] = useState('');
  const send = () => {
    const numbers = Object.entries(likely).map(([field, text]) => [field, Number(text)]);
    const likelihood = Object.fromEntries(numbers) as Likelihood;
    change.mutate(
      { input: { order, likelihood, reason }, version: seen.version },
      {
        onSuccess: () => {
          say('Every shortage is worked out by the new rule.');
          onClose();
        },
      },
    );
  };
  return (
    <Dialog title="Whom does stock serve first?" isOpen onClose={onClose}>
      {isNewer ? <NewerVersion onTake={takeNewest} /> : null}
      <CommandForm
        problem={change.error}
        isPending={change.isPending}
        submit="Change the rule"
        onSubmit={send}
        onCancel={onClose}
      >
        <Select name="order" label="Served first" value={order} onChange={setOrder} choices={orders} isRequired />
        <p className="small soft">
          Work that no customer has approved yet comes after all approved work. How likely is it?
        </p>
        {answers.map(({ field, label, unit }) => (
          <DecimalField
            key={field}
            name={`likelihood/${field}`}
            label={label}
            unit={unit}
            decimals={0}
            size={5}
            value={likely[field] ?? ''}
            onChange={(text) => setLikely({ ...likely, [field]: text })}
            isRequired
          />
        ))}
        <TextField name="reason" label="Reason" value={reason} onChange={setReason} isRequired />
      </CommandForm>
    </Dialog>
  );
}

/** The rule stock is handed out by, who set it and why; changed from here. */
export function AllocationPolicy() {
  const policy = useSuspenseQuery(queryFor(allocationOperations.allocationPolicy, {})).data;
  const mayChange = useMay(allocationOperations.changeAllocationPolicy);
  const [isChanging, setChanging] = useState(false);
  return (
    <div className="row between">
      <div>
        <p>
          Stock serves approved work first, then{' '}
          <strong>{orders.find(({ value }) => value === policy.order)?.text}</strong>.{' '}
          {policy.since ? (
            <span className="small soft">
              {policy.by}, <InstantText instant={policy.since} />: {policy.reason}
            </span>
          ) : null}
        </p>
        <Odds odds={policy.odds} />
      </div>
      {mayChange ? <Button onPress={() => setChanging(true)}>Change the rule</Button> : null}
      {isChanging ? <PolicyDialog policy={policy} onClose={() => setChanging(false)} /> : null}
    </div>
  );
}
