import { type SourceClass, sourceClasses, sourceClassTitles } from '@hubwright/contracts/inventory/operations';
import { CheckboxList } from '../../ui/Checkbox.tsx';
import { TextField } from '../../ui/TextField.tsx';

/** What is known of a customer, as it is typed. */
export interface CustomerDraft {
  readonly name: string;
  readonly contactName: string;
  readonly email: string;
  readonly phone: string;
  readonly address: string;
  readonly acceptedSources: readonly SourceClass[];
}
export const newCustomer: CustomerDraft = {
  name: '',
  contactName: '',
  email: '',
  phone: '',
  address: '',
  acceptedSources: [],
};

const texts = [
  ['contactName', 'Whom to call'],
  ['email', 'E-mail'],
  ['phone', 'Telephone'],
] as const;

/** Name, whom to call, and which sources of parts this customer accepts: kits take nothing else. */
export function CustomerFields(props: { draft: CustomerDraft; set: (changes: Partial<CustomerDraft>) => void }) {
  const { draft, set } = props;
  return (
    <>
      <TextField name="name" label="Name" value={draft.name} onChange={(name) => set({ name })} isRequired />
      {texts.map(([name, label]) => (
        <TextField
          key={name}
          name={name}
          label={label}
          autoComplete="off"
          value={draft[name]}
          onChange={(text) => set({ [name]: text })}
        />
      ))}
      <TextField
        name="address"
        label="Address"
        lines={2}
        value={draft.address}
        onChange={(address) => set({ address })}
      />
      <CheckboxList
        name="acceptedSources"
        label="Accepts parts that are"
        value={draft.acceptedSources}
        onChange={(acceptedSources) => set({ acceptedSources })}
        choices={sourceClasses.map((value) => ({ value, text: sourceClassTitles[value] }))}
        isRequired
      />
    </>
  );
}
