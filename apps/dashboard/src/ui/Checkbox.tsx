import type { ReactNode } from 'react';
import {
  Checkbox as AriaCheckbox,
  type CheckboxProps as AriaCheckboxProps,
  CheckboxGroup,
  FieldError,
  Radio,
  RadioGroup,
} from 'react-aria-components';
import type { Choice } from './Select.tsx';
import { FieldHead } from './TextField.tsx';

export interface CheckboxProps extends Omit<AriaCheckboxProps, 'children' | 'className'> {
  children: ReactNode;
}

export function Checkbox({ children, ...props }: CheckboxProps) {
  return (
    <AriaCheckbox {...props} className="checkbox">
      <svg viewBox="0 0 18 18" aria-hidden="true">
        <rect x="1" y="1" width="16" height="16" rx="3" />
        <path d="M4.500 9.500 7.700 12.700 13.500 5.500" />
      </svg>
      <span>{children}</span>
    </AriaCheckbox>
  );
}

export interface ManyProps<V extends string> {
  label: string;
  hint?: string;
  name?: string;
  value: readonly V[];
  onChange: (value: V[]) => void;
  choices: readonly Choice<V>[];
  isRequired?: boolean;
}

/** Any number of a few, all in sight. */
export function CheckboxList<V extends string>({ label, hint, choices, value, onChange, ...props }: ManyProps<V>) {
  return (
    <CheckboxGroup {...props} value={[...value]} onChange={(values) => onChange(values as V[])} className="field">
      <FieldHead label={label} hint={hint} required={props.isRequired ?? false} />
      <div className="checkbox-list">
        {choices.map((choice) => (
          <Checkbox key={choice.value} value={choice.value}>
            {choice.text}
          </Checkbox>
        ))}
      </div>
      <FieldError className="field-error" />
    </CheckboxGroup>
  );
}

export interface OneProps<V extends string> extends Omit<ManyProps<V>, 'value' | 'onChange'> {
  value: V | null;
  onChange: (value: V) => void;
}

/** One of a few, all in sight: better than a list to open when there are two to five. */
export function RadioList<V extends string>({ label, hint, choices, value, onChange, ...props }: OneProps<V>) {
  return (
    <RadioGroup {...props} value={value} onChange={(chosen) => onChange(chosen as V)} className="field">
      <FieldHead label={label} hint={hint} required={props.isRequired ?? false} />
      <div className="checkbox-list">
        {choices.map((choice) => (
          <Radio key={choice.value} value={choice.value} className="checkbox">
            <svg viewBox="0 0 18 18" aria-hidden="true">
              <circle cx="9" cy="9" r="8" />
              <circle className="dot" cx="9" cy="9" r="4" />
            </svg>
            <span>{choice.text}</span>
          </Radio>
        ))}
      </div>
      <FieldError className="field-error" />
    </RadioGroup>
  );
}
