import { Button } from './Button.tsx';
import { Select } from './Select.tsx';
import { TextField } from './TextField.tsx';

/** Who signs beside the caller, and what they have entered so far. */
export interface SecondDraft {
  readonly personId: string | null;
  readonly byPin: boolean;
  readonly secret: string;
}
export const nobodyYet: SecondDraft = { personId: null, byPin: true, secret: '' };

/** The draft as a command takes it: `<role>Id` and `<role>Signature`; nothing while nobody is chosen. */
export function signatureOf(role: 'supervisor' | 'witness', { personId, byPin, secret }: SecondDraft) {
  if (personId === null) return {};
  return { [`${role}Id`]: personId, [`${role}Signature`]: byPin ? { pin: secret } : { password: secret } };
}

/** The second half of a signature of two: who it is, and that person's own PIN or password. */
export function SecondSigner(props: {
  as: 'supervisor' | 'witness';
  label: string;
  placeholder: string;
  people: readonly { id: string; displayName: string; hasPin: boolean }[];
  draft: SecondDraft;
  setDraft: (draft: SecondDraft) => void;
}) {
  const { as: role, people, draft, setDraft } = props;
  const chosen = people.find(({ id }) => id === draft.personId);
  const byPin = draft.byPin && (chosen?.hasPin ?? true);
  return (
    <>
      <Select
        name={`${role}Id`}
        label={props.label}
        placeholder={props.placeholder}
        value={draft.personId}
        onChange={(personId) =>
          setDraft({ personId, secret: '', byPin: people.find(({ id }) => id === personId)?.hasPin ?? true })
        }
        choices={people.map(({ id, displayName }) => ({ value: id, text: displayName }))}
        isRequired
      />
      <TextField
        key={byPin ? 'pin' : 'password'}
        name={`${role}Signature/${byPin ? 'pin' : 'password'}`}
        label={`The ${role}’s ${byPin ? 'PIN' : 'password'}`}
        type="password"
        inputMode={byPin ? 'numeric' : 'text'}
        autoComplete="off"
        value={draft.secret}
        onChange={(secret) => setDraft({ ...draft, secret, byPin })}
        isRequired
      />
      {chosen?.hasPin ? (
        <Button weight="quiet" onPress={() => setDraft({ ...draft, secret: '', byPin: !byPin })}>
          {`The ${role} uses the ${byPin ? 'password' : 'PIN'} instead`}
        </Button>
      ) : null}
    </>
  );
}
