import { keepPreviousData, type UseQueryOptions, useQuery } from '@tanstack/react-query';
import { useEffect, useState } from 'react';
import { ComboBox, FieldError, Input, type Key, ListBox, ListBoxItem, Popover } from 'react-aria-components';
import type { ProblemError } from '../api/problem.ts';
import { FieldHead } from './TextField.tsx';

/** One thing that can be picked: its id, its name as typed, and a second line that tells it from its neighbours. */
export interface Found {
  readonly id: string;
  readonly name: string;
  readonly detail?: string;
}

export interface SearchBoxProps<Data> {
  label: string;
  hint?: string;
  name?: string;
  isRequired?: boolean;
  /** The read that answers to the typed text: usually `(text) => queryFor(op, { search: text })`. */
  // biome-ignore lint/suspicious/noExplicitAny: the key's shape does not matter here, and differs per operation
  search: (text: string) => UseQueryOptions<Data, ProblemError, Data, any>;
  found: (data: Data) => readonly Found[];
  picked: Found | null;
  onPick: (thing: Found | null) => void;
}

function useSettled(text: string, waitMs: number): string {
  const [settled, setSettled] = useState(text);
  useEffect(() => {
    const timer = setTimeout(() => setSettled(text), waitMs);
    return () => clearTimeout(timer);
  }, [text, waitMs]);
  return settled;
}

/** Search the server while typing and pick one; the keyboard does all of it. */
export function SearchBox<Data>({ label, hint, search, found, picked, onPick, ...props }: SearchBoxProps<Data>) {
  const [text, setText] = useState(picked?.name ?? '');
  const settled = useSettled(text.trim(), 200);
  const answer = useQuery({ ...search(settled), placeholderData: keepPreviousData as never });
  const rows = answer.data === undefined ? [] : found(answer.data as Data);
  const pick = (key: Key | null) => {
    const thing = rows.find((row) => row.id === key) ?? null;
    if (thing) setText(thing.name);
    onPick(thing);
  };
  return (
    <ComboBox
      {...props}
      className="field"
      items={rows}
      inputValue={text}
      onInputChange={(typed) => {
        setText(typed);
        if (picked && typed !== picked.name) onPick(null);
      }}
      value={picked?.id ?? null}
      onChange={pick}
      defaultFilter={() => true}
      allowsEmptyCollection
      menuTrigger="input"
    >
      <FieldHead label={label} hint={hint} required={props.isRequired ?? false} />
      <Input className="input" autoComplete="off" />
      <FieldError className="field-error" />
      <Popover className="popover">
        <ListBox<Found>
          className="list"
          renderEmptyState={() => <p className="list-empty">{answer.isPending ? 'Searching…' : 'Nothing fits'}</p>}
        >
          {(thing) => (
            <ListBoxItem id={thing.id} textValue={thing.name} className="list-item">
              <span>{thing.name}</span>
              {thing.detail ? <span className="soft small">{thing.detail}</span> : null}
            </ListBoxItem>
          )}
        </ListBox>
      </Popover>
    </ComboBox>
  );
}
