import type { ReactNode } from 'react';
import {
  TextField as AriaTextField,
  type TextFieldProps as AriaTextFieldProps,
  FieldError,
  Input,
  Label,
  Text,
  TextArea,
} from 'react-aria-components';

export interface TextFieldProps extends Omit<AriaTextFieldProps, 'children' | 'className'> {
  label: string;
  /** One line under the label: the form expected, or where to find it. */
  hint?: ReactNode;
  /** More than one line of text. */
  lines?: number;
  /** Shown after the entry, outside of it: a unit or a currency. */
  unit?: string;
  /** How wide the entry is, in characters; the full width when left out. */
  size?: number;
  /** A serial, code or sign-in name: no capitals and no spelling put in by the device. */
  isCode?: boolean;
  /** A control at the end of the entry. */
  after?: ReactNode;
}

/** Name it by its place in the input (`shop/name` for `/shop/name`), so that the server's pointers find it. */
export function TextField({ label, hint, lines, unit, size, isCode, after, ...props }: TextFieldProps) {
  return (
    <AriaTextField {...props} className="field">
      <FieldHead label={label} hint={hint} required={props.isRequired ?? false} />
      <span className="entry">
        {lines ? (
          <TextArea rows={lines} className="input" />
        ) : (
          <Input
            className="input"
            {...(size ? { size } : {})}
            {...(isCode ? { autoCapitalize: 'none', spellCheck: false } : {})}
          />
        )}
        {unit ? <span className="unit">{unit}</span> : null}
        {after}
      </span>
      <FieldError className="field-error" />
    </AriaTextField>
  );
}

/** Label and hint, the same above every kind of field. */
export function FieldHead({ label, hint, required = true }: { label: string; hint?: ReactNode; required?: boolean }) {
  return (
    <span className="field-head">
      <Label>{label}</Label>
      {required ? null : <span className="soft small"> optional</span>}
      {hint ? (
        <Text slot="description" className="hint">
          {hint}
        </Text>
      ) : null}
    </span>
  );
}
