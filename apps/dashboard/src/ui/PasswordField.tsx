import { useState } from 'react';
import { Button } from './Button.tsx';
import { TextField } from './TextField.tsx';

export interface PasswordFieldProps {
  name: string;
  label: string;
  hint?: string;
  value: string;
  onChange: (text: string) => void;
  autoComplete: 'current-password' | 'new-password';
}

/** A password that can be looked at while typing: a long one is hard to type blind with gloves on. */
export function PasswordField({ label, ...props }: PasswordFieldProps) {
  const [shown, setShown] = useState(false);
  const toggle = (
    <Button
      weight="quiet"
      aria-label={shown ? 'Hide what is typed' : 'Show what is typed'}
      onPress={() => setShown(!shown)}
    >
      {shown ? 'Hide' : 'Show'}
    </Button>
  );
  return <TextField {...props} label={label} type={shown ? 'text' : 'password'} isRequired after={toggle} />;
}
