import { TextField, type TextFieldProps } from './TextField.tsx';

export interface DecimalFieldProps extends Omit<TextFieldProps, 'value' | 'onChange' | 'lines' | 'type' | 'validate'> {
  /** The number as text; no digit is lost on the way. A measured value starts empty: it is never filled in for the person. */
  value: string;
  onChange: (text: string) => void;
  /** Digits after the point the manual or the currency asks for; 0 for whole numbers. */
  decimals?: number;
}

const spoken = ['a whole number', 'a number with one decimal'];

function complaint(text: string, decimals: number): string | null {
  if (text === '') return null;
  const shape = decimals === 0 ? /^-?\d{1,12}$/ : new RegExp(`^-?\\d{1,12}(\\.\\d{1,${decimals}})?$`);
  if (shape.test(text)) return null;
  return `Write ${spoken[decimals] ?? `a number with up to ${decimals} decimals`}, such as ${(12.5).toFixed(decimals)}`;
}

/** A decimal typed as text with the keys of a number pad. No stepping buttons: a touch must not change a measurement. */
export function DecimalField({ decimals = 4, ...props }: DecimalFieldProps) {
  return (
    <TextField
      size={10}
      autoComplete="off"
      inputMode={decimals === 0 ? 'numeric' : 'decimal'}
      {...props}
      onChange={(text) => props.onChange(text.trim())}
      validate={(text) => complaint(text, decimals)}
    />
  );
}
