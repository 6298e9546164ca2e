import type { FormField } from '@hubwright/contracts/manuals/revision';

/** What was entered into a process form, by the name of the entry. */
export type Filled = Readonly<Record<string, string>>;

/** The form as commands take it, in the form's order. */
export function formInput(fields: readonly FormField[], filled: Filled) {
  return fields.map(({ name }) => ({ name, value: (filled[name] ?? '').trim() }));
}

/** Entries that are still empty. */
export function fieldsLeft(fields: readonly FormField[], filled: Filled): string[] {
  return fields.filter(({ name }) => !filled[name]?.trim()).map(({ name }) => name);
}
