import { processChoices, roleChoices } from '../../format/process-words.ts';
import { Checkbox, CheckboxList } from '../../ui/Checkbox.tsx';
import { DecimalField } from '../../ui/DecimalField.tsx';
import { FieldGroup } from '../../ui/FieldGroup.tsx';
import { StateMark } from '../../ui/StateMark.tsx';
import { TextField } from '../../ui/TextField.tsx';
import { Measuring } from './ShopMeasuring.tsx';
import { ShopPlaces, ShopPrices } from './ShopMoneyFields.tsx';
import { StockAge } from './ShopStock.tsx';
import type { ShopFieldsProps } from './shop-draft.ts';

function Identity({ draft, onChange, at }: ShopFieldsProps) {
  return (
    <FieldGroup title="The shop and its certificate">
      <TextField
        name={`${at}name`}
        label="Name of the shop"
        value={draft.name}
        onChange={(name) => onChange({ name })}
        isRequired
      />
      <TextField
        name={`${at}certificateNumber`}
        label="Certificate number"
        value={draft.certificateNumber}
        onChange={(certificateNumber) => onChange({ certificateNumber })}
        isRequired
      />
      <TextField
        name={`${at}authority`}
        label="Authority"
        hint="Who issued the certificate"
        value={draft.authority}
        onChange={(authority) => onChange({ authority })}
        isRequired
      />
      <TextField
        name={`${at}ratings`}
        label="Ratings"
        hint="One a line, as the certificate words them"
        lines={3}
        value={draft.ratings}
        onChange={(ratings) => onChange({ ratings })}
        isRequired
      />
    </FieldGroup>
  );
}

function Statements({ draft, onChange, at }: ShopFieldsProps) {
  return (
    <FieldGroup
      title="What records say"
      note="In the words your certificate and authority call for. These stand on every release record."
    >
      <TextField
        name={`${at}recordStatements/approval`}
        label="Approval statement"
        lines={4}
        value={draft.approval}
        onChange={(approval) => onChange({ approval })}
        isRequired
      />
      <TextField
        name={`${at}recordStatements/caution`}
        label="Caution line"
        hint="Printed where a mistake can hurt someone"
        lines={4}
        value={draft.caution}
        onChange={(caution) => onChange({ caution })}
        isRequired
      />
      <Checkbox
        isSelected={draft.namesPersonCertificate}
        onChange={(namesPersonCertificate) => onChange({ namesPersonCertificate })}
      >
        A release names the approving person’s own certificate number
      </Checkbox>
    </FieldGroup>
  );
}

function SigningIn({ draft, onChange, at }: ShopFieldsProps) {
  return (
    <FieldGroup
      title="Signing in"
      note="Badge and PIN do on a shared tablet only where that person signed in with password (and code) not long ago."
    >
      <CheckboxList
        name={`${at}secondFactorRoles`}
        label="Must give a one-time code beside the password"
        value={draft.secondFactorRoles}
        onChange={(secondFactorRoles) => onChange({ secondFactorRoles })}
        choices={roleChoices}
      />
      {draft.secondFactorRoles.includes('administrator') ? null : (
        <p>
          <StateMark state="hold" word="Weak" /> Administrators need no second factor here: whoever learns one password
          can change everyone’s account. Meant for the demonstration only.
        </p>
      )}
      <DecimalField
        name={`${at}lockAfterMinutes`}
        label="A device locks itself when nobody touches it for"
        unit="minutes"
        decimals={0}
        value={draft.lockAfterMinutes}
        onChange={(lockAfterMinutes) => onChange({ lockAfterMinutes })}
        isRequired
      />
      <DecimalField
        name={`${at}badgeSwitchHours`}
        label="Badge and PIN do after a full sign-in for"
        hint="At most 12; 0 for never"
        unit="hours"
        decimals={0}
        value={draft.badgeSwitchHours}
        onChange={(badgeSwitchHours) => onChange({ badgeSwitchHours })}
        isRequired
      />
    </FieldGroup>
  );
}

/** Every field of the shop profile, in groups. */
export function ShopFields(props: ShopFieldsProps) {
  return (
    <>
      <Identity {...props} />
      <Statements {...props} />
      <ShopPlaces {...props} />
      <ShopPrices {...props} />
      <SigningIn {...props} />
      <Measuring {...props} />
      <StockAge {...props} />
      <FieldGroup
        title="Inspecting one's own work"
        note="As a rule another person inspects. Tick only the processes where your manual allows the same person to do both; each use stays on the record."
      >
        <CheckboxList
          name={`${props.at}inspectOwnWork`}
          label="The same person may do and inspect"
          value={props.draft.inspectOwnWork}
          onChange={(inspectOwnWork) => props.onChange({ inspectOwnWork })}
          choices={processChoices}
        />
      </FieldGroup>
    </>
  );
}
