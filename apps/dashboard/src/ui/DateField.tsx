import { TextField, type TextFieldProps } from './TextField.tsx';

/** A calendar date as `YYYY-MM-DD` text, with the browser's own calendar: it knows the person's keyboard and language. */
export function DateField(props: Omit<TextFieldProps, 'lines' | 'type' | 'unit' | 'size'>) {
  return <TextField {...props} type="date" size={12} />;
}
