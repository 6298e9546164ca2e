import {
  Select as AriaSelect,
  Button,
  FieldError,
  type Key,
  ListBox,
  ListBoxItem,
  Popover,
  SelectValue,
} from 'react-aria-components';
import { FieldHead } from './TextField.tsx';

export interface Choice<V extends string> {
  readonly value: V;
  readonly text: string;
}

export interface SelectProps<V extends string> {
  label: string;
  hint?: string;
  /** Place in the input, as for `TextField`. */
  name?: string;
  value: V | null;
  onChange: (value: V) => void;
  choices: readonly Choice<V>[];
  isRequired?: boolean;
  placeholder?: string;
}

/** One of a few. For more than about fifteen, or for things on the server, use `SearchBox`. */
export function Select<V extends string>({ label, hint, choices, onChange, value, ...props }: SelectProps<V>) {
  return (
    <AriaSelect
      {...props}
      value={value}
      onChange={(key: Key | null) => key !== null && onChange(key as V)}
      className="field"
    >
      <FieldHead label={label} hint={hint} required={props.isRequired ?? false} />
      <Button className="input select-button">
        <SelectValue />
        <svg viewBox="0 0 12 8" aria-hidden="true">
          <path d="M1 1.500 6 6.500l5-5" />
        </svg>
      </Button>
      <FieldError className="field-error" />
      <Popover className="popover">
        <ListBox className="list" items={choices}>
          {(choice) => (
            <ListBoxItem id={choice.value} textValue={choice.text} className="list-item">
              {choice.text}
            </ListBoxItem>
          )}
        </ListBox>
      </Popover>
    </AriaSelect>
  );
}
