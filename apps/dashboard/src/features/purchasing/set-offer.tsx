import { partOperations } from '@hubwright/contracts/inventory/part-operations';
import { offerOperations } from '@hubwright/contracts/purchasing/offer-operations';
import { useState } from 'react';
import { useCommand } from '../../api/command.ts';
import { queryFor } from '../../api/query.ts';
import { CommandForm } from '../../ui/CommandForm.tsx';
import { DateField } from '../../ui/DateField.tsx';
import { DecimalField } from '../../ui/DecimalField.tsx';
import { Dialog } from '../../ui/Dialog.tsx';
import { type Found, SearchBox } from '../../ui/SearchBox.tsx';
import { TextField } from '../../ui/TextField.tsx';
import { say } from '../../ui/toasts.tsx';
import type { Offer, Supplier } from './suppliers.ts';

/** `2.50; 2.10 from 100` as prices; what cannot be read is sent as it is, so that the server says what is wrong. */
export function readPrices(text: string): { from: number; unitPrice: string }[] {
  return text
    .split(';')
    .map((each) => each.trim())
    .filter((each) => each !== '')
    .map((each) => {
      const [unitPrice = '', from = '1'] = each.split(/\s+from\s+/);
      return { from: Number(from), unitPrice };
    });
}

const writtenPrices = (offer: Offer | undefined) =>
  offer?.breaks.map(({ from, unitPrice }) => (from === 1 ? unitPrice : `${unitPrice} from ${from}`)).join('; ') ?? '';

/**
 * How a supplier sells a part: changes an offer, adds one for a part still to be named, or says what follows on one: the same
 * terms from a later day.
 */
export function SetOfferDialog(props: {
  supplier: Supplier;
  offer?: Offer | undefined;
  isFollowing?: boolean;
  onClose: () => void;
}) {
  const { supplier, offer, isFollowing = false, onClose } = props;
  const changed = isFollowing ? undefined : offer;
  const save = useCommand(offerOperations.setOffer);
  const [part, setPart] = useState<Found | null>(offer ? { id: offer.part.id, name: offer.part.number } : null);
  const [draft, setDraft] = useState({
    preference: String(offer?.preference ?? 1),
    packSize: String(offer?.packSize ?? 1),
    minimum: String(offer?.minimum ?? 1),
    leadTimeDays: String(offer?.leadTimeDays ?? ''),
    breaks: writtenPrices(offer),
    supplierPartNumber: offer?.supplierPartNumber ?? '',
    validFrom: changed?.validFrom ?? '',
    validUntil: changed?.validUntil ?? '',
  });
  const put = (key: keyof typeof draft) => (text: string) => setDraft({ ...draft, [key]: text });
  const whole = (key: 'preference' | 'packSize' | 'minimum' | 'leadTimeDays', label: string, hint?: string) => (
    <DecimalField name={key} label={label} hint={hint} decimals={0} value={draft[key]} onChange={put(key)} isRequired />
  );
  const send = () =>
    save.mutate(
      {
        input: {
          ...{ partId: part?.id ?? '', supplierId: supplier.id, breaks: readPrices(draft.breaks) },
          ...{ preference: Number(draft.preference), packSize: Number(draft.packSize), minimum: Number(draft.minimum) },
          leadTimeDays: draft.leadTimeDays === '' ? Number.NaN : Number(draft.leadTimeDays),
          supplierPartNumber: draft.supplierPartNumber,
          ...{ validFrom: draft.validFrom || null, validUntil: draft.validUntil || null },
          ...(changed ? { offerId: changed.id, seenVersion: changed.version } : {}),
        },
      },
      {
        onSuccess: () => {
          say(`How ${supplier.name} sells ${part?.name} is on record.`);
          onClose();
        },
      },
    );
  return (
    <Dialog title={`How ${supplier.name} sells ${offer?.part.number ?? 'a part'}`} isOpen onClose={onClose}>
      <CommandForm
        problem={save.error}
        isPending={save.isPending}
        submit="Keep the offer"
        onSubmit={send}
        onCancel={onClose}
      >
        {offer ? null : (
          <SearchBox
            name="partId"
            label="Part"
            picked={part}
            onPick={setPart}
            search={(text) => queryFor(partOperations.listParts, { search: text, limit: 20 })}
            found={({ rows }) => rows.map(({ id, number, description }) => ({ id, name: number, detail: description }))}
            isRequired
          />
        )}
        <div className="field-grid">
          {whole('preference', 'Asked as number', '1 is asked first')}
          {whole('packSize', 'Pieces in a pack')}
          {whole('minimum', 'Least pieces')}
          {whole('leadTimeDays', 'Agreed days to a delivery')}
        </div>
        <TextField
          name="breaks"
          label="Price each"
          hint="With lower prices for more: 2.50; 2.10 from 100"
          value={draft.breaks}
          onChange={put('breaks')}
          isRequired
        />
        <div className="field-grid">
          <TextField
            name="supplierPartNumber"
            label="Their part number"
            value={draft.supplierPartNumber}
            onChange={put('supplierPartNumber')}
            isCode
          />
          <DateField
            name="validFrom"
            label="Holds from"
            hint={isFollowing ? 'What holds now ends the day before' : undefined}
            value={draft.validFrom}
            onChange={put('validFrom')}
            isRequired={isFollowing}
          />
          <DateField
            name="validUntil"
            label="Holds until"
            hint="The last day"
            value={draft.validUntil}
            onChange={put('validUntil')}
          />
        </div>
      </CommandForm>
    </Dialog>
  );
}
