import { confirmed, type FormField } from '@hubwright/contracts/manuals/revision';
import { type Pointed, Problem } from '@hubwright/contracts/problems';

export interface FormEntry {
  readonly name: string;
  readonly value: string;
}

/** The entries of several steps that are signed together, each name once. */
export function formOf(steps: readonly { readonly form: unknown }[]): FormField[] {
  const fields = steps.flatMap(({ form }) => form as FormField[]);
  return fields.filter(({ name }, index) => fields.findIndex((one) => one.name === name) === index);
}

const number = /^-?\d{1,12}(\.\d{1,8})?$/;

/**
 * A process form as the step asks for it, in the form's order. Throws `form-missing` with a pointer for each entry that is missing, twice
 * there, of another step, not confirmed, or no number where the form gives a unit.
 */
export function filledForm(fields: readonly FormField[], given: readonly FormEntry[]): FormEntry[] {
  const wrong: Pointed[] = given.flatMap(({ name, value }, index) => {
    const field = fields.find((one) => one.name === name);
    const isTwice = given.findIndex((one) => one.name === name) !== index;
    if (!field || isTwice)
      return [{ pointer: `/form/${index}/name`, detail: `“${name}” is not asked for, or given twice` }];
    if (field.confirm && value !== confirmed)
      return [{ pointer: `/form/${index}/value`, detail: `${name} is not confirmed` }];
    const isUnread = field.unit !== undefined && !number.test(value);
    return isUnread ? [{ pointer: `/form/${index}/value`, detail: `${name} is a number of ${field.unit}` }] : [];
  });
  const missing = fields.filter(({ name }) => !given.some((one) => one.name === name)).map(({ name }) => name);
  if (missing.length > 0) wrong.push({ pointer: '/form', detail: `Not entered: ${missing.join(', ')}` });
  const [first] = wrong;
  if (first) throw new Problem('form-missing', first.detail, { missing }, wrong);
  return fields.map(({ name }) => ({ name, value: given.find((one) => one.name === name)?.value ?? '' }));
}
