import { type LabelForm, labelForms, labelFormTitles } from '@hubwright/contracts/inventory/label-forms';
import { useState } from 'react';
import { LinkButton } from './Button.tsx';
import { InlineSelect } from './InlineSelect.tsx';

const stored = 'hubwright.label-form';
const choices = labelForms.map((value) => ({ value, text: labelFormTitles[value] }));

function formHere(): LabelForm {
  try {
    return labelForms.find((form) => form === localStorage.getItem(stored)) ?? 'sheet';
  } catch {
    return 'sheet';
  }
}

function keepForm(form: LabelForm): void {
  try {
    localStorage.setItem(stored, form);
  } catch {
    // Storage may be forbidden; the choice then lasts as long as the page.
  }
}

/** A label to print, on what the printer of this device takes: chosen once, kept here. */
export function PrintLabel(props: { text: string; hrefOf: (form: LabelForm) => string; weight?: 'next' | 'plain' }) {
  const [form, setForm] = useState(formHere);
  return (
    <span className="row tight">
      <LinkButton href={props.hrefOf(form)} target="_blank" weight={props.weight ?? 'plain'}>
        {props.text}
      </LinkButton>
      <InlineSelect
        label="on"
        value={form}
        onChange={(chosen) => {
          setForm(chosen);
          keepForm(chosen);
        }}
        choices={choices}
        isRequired
      />
    </span>
  );
}
