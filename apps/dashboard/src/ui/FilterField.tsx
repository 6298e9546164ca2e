import { useEffect, useState } from 'react';
import { Input, Label, TextField } from 'react-aria-components';

const settleMs = 250;

/** Text that filters a list; the address follows when typing pauses. */
export function FilterField(props: {
  label: string;
  value: string;
  onChange: (text: string) => void;
  placeholder?: string;
}) {
  const { value, onChange } = props;
  const [text, setText] = useState(value);
  useEffect(() => setText(value), [value]);
  // biome-ignore lint/correctness/useExhaustiveDependencies: only typing starts the wait
  useEffect(() => {
    if (text === value) return;
    const timer = setTimeout(() => onChange(text.trim()), settleMs);
    return () => clearTimeout(timer);
  }, [text]);
  return (
    <TextField className="row tight" value={text} onChange={setText}>
      <Label className="small soft">{props.label}</Label>
      <Input className="input" size={18} placeholder={props.placeholder ?? 'any piece of it'} autoComplete="off" />
    </TextField>
  );
}
