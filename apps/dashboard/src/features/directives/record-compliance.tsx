import { directiveOperations } from '@hubwright/contracts/directives/operations';
import { useState } from 'react';
import { parseHours } from '../../format/numbers.ts';
import { useToday } from '../../format/use-today.ts';
import { Checkbox, RadioList } from '../../ui/Checkbox.tsx';
import { DateField } from '../../ui/DateField.tsx';
import { DecimalField } from '../../ui/DecimalField.tsx';
import { FormThenSign } from '../../ui/FormThenSign.tsx';
import type { Signer } from '../../ui/SignCommand.tsx';
import { TextField } from '../../ui/TextField.tsx';
import { calledOf, type Standing } from './directives.ts';

const outcomes = [
  { value: 'done' as const, text: 'It was done here, today' },
  { value: 'found-done' as const, text: 'The papers show that it was done before' },
  { value: 'does-not-apply' as const, text: 'I looked: it does not concern this part' },
  { value: 'taken-back' as const, text: 'What was recorded last was a mistake' },
];
type Outcome = (typeof outcomes)[number]['value'];

/** What an inspector saw of a directive on one part, with the method, signed. */
export function RecordCompliance(props: { of: Standing; workOrderId: string; signer: Signer; onClose: () => void }) {
  const { of, workOrderId, onClose } = props;
  const [outcome, setOutcome] = useState<Outcome>(of.state === 'undecided' ? 'does-not-apply' : 'done');
  const [method, setMethod] = useState('');
  const [isTerminating, setTerminating] = useState(false);
  const [doneOn, setDoneOn] = useState(useToday());
  const [hours, setHours] = useState('');
  const isFound = outcome === 'found-done';
  const isWork = isFound || outcome === 'done';
  const hoursTenths = hours === '' ? ('unknown' as const) : parseHours(hours);
  const title = `${calledOf(of.directive)}, ${of.item}`;
  const input = {
    ...{ workOrderId, directiveId: of.directive.id, itemId: of.itemId, outcome, method },
    terminating: isWork && isTerminating,
    ...(isFound ? { doneOn, ...(hoursTenths === undefined ? {} : { hoursTenths }) } : {}),
  };
  const summary = (
    <p>
      {title}: {outcomes.find(({ value }) => value === outcome)?.text}. {method}
    </p>
  );
  const op = directiveOperations.recordCompliance;
  const signing = { op, input, signer: props.signer, onSigned: onClose, summary };
  return (
    <FormThenSign title={title} onClose={onClose} signing={isFound && hoursTenths === undefined ? undefined : signing}>
      <p>{of.directive.action}</p>
      <RadioList
        name="outcome"
        label="What you found"
        value={outcome}
        onChange={setOutcome}
        choices={outcomes}
        isRequired
      />
      <TextField
        name="method"
        label={isWork ? 'How it was complied with, and where that stands' : 'Why'}
        lines={2}
        value={method}
        onChange={setMethod}
        isRequired
      />
      {isFound ? (
        <div className="field-grid">
          <DateField name="doneOn" label="Done on" value={doneOn} onChange={setDoneOn} isRequired />
          <DecimalField
            name="hoursTenths"
            label="At hours since new"
            hint="Empty where the papers do not say"
            unit="h"
            decimals={1}
            value={hours}
            onChange={setHours}
          />
        </div>
      ) : null}
      {isWork && of.directive.terminatingAction !== null ? (
        <Checkbox isSelected={isTerminating} onChange={setTerminating}>
          What ends it for good was done: {of.directive.terminatingAction}
        </Checkbox>
      ) : null}
    </FormThenSign>
  );
}
