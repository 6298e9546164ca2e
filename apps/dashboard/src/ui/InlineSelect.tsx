import { Select, type SelectProps } from './Select.tsx';

/** A filter above a table: its label beside it, so that the row stays one line high. */
export function InlineSelect<V extends string>(props: SelectProps<V>) {
  return (
    <div className="inline-field">
      <Select {...props} />
    </div>
  );
}
