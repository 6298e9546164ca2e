import { TextField } from '../../ui/TextField.tsx';

/** Six digits of an authenticator, which may be pasted with its spaces; or a recovery code. */
export function CodeField(props: { value: string; onChange: (text: string) => void; hint?: string }) {
  return (
    <TextField
      name="code"
      label="One-time code"
      hint={props.hint ?? 'The six digits your authenticator shows now, or a recovery code'}
      autoComplete="one-time-code"
      isCode
      value={props.value}
      onChange={props.onChange}
      isRequired
      autoFocus
    />
  );
}
