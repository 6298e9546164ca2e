import { type RefObject, useState } from 'react';
import { SearchField as AriaSearchField, Input } from 'react-aria-components';
import { KeyHint } from '../ui/KeyHint.tsx';
import { useNavigateTo } from '../ui/Link.tsx';

/** One plain box for serials, work orders, customers and parts, from everywhere. */
export function SearchField({ inputRef }: { inputRef: RefObject<HTMLInputElement | null> }) {
  const [text, setText] = useState('');
  const navigate = useNavigateTo();
  const find = (typed: string) => {
    const code = typed.trim();
    if (code !== '') navigate(`/find?code=${encodeURIComponent(code)}`);
  };
  return (
    <search className="global-search">
      <AriaSearchField
        aria-label="Find a serial, work order, customer, part or person"
        value={text}
        onChange={setText}
        onSubmit={find}
      >
        <Input ref={inputRef} className="input" placeholder="Serial, work order, customer, part…" autoComplete="off" />
        <KeyHint keys="/" />
      </AriaSearchField>
    </search>
  );
}
