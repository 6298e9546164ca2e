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
  return (
    <div className="password-field">
      <TextField {...props} label={label} type={shown ? 'text' : 'password'} isRequired />
      <Button
        weight="quiet"
        aria-label={`${shown ? 'Hide' : 'Show'} ${label.toLowerCase()}`}
        onPress={() => setShown(!shown)}
      >
        {shown ? 'Hide' : 'Show'}
      </Button>
    </div>
  );
}
