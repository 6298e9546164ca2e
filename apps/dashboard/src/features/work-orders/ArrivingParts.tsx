import { Checkbox } from '../../ui/Checkbox.tsx';
import { TextField } from '../../ui/TextField.tsx';
import type { ArrivingProps } from './ArrivingWho.tsx';
import type { PartDraft } from './arrival-draft.ts';
import { partNumberAt } from './arrival-draft.ts';
import styles from './arriving.module.css';
import { HoursField } from './HoursField.tsx';

function PartRow(props: {
  at: number;
  part: PartDraft;
  inherited: string;
  set: (changes: Partial<PartDraft>) => void;
}) {
  const { at, part, set } = props;
  const title = part.position.replace(/^./, (letter) => letter.toUpperCase());
  return (
    <fieldset className={styles.part} name={`parts/${at}`}>
      <legend>{title}</legend>
      <TextField
        name={`parts/${at}/partNumber`}
        label="Part number"
        {...(part.partNumber === '' && props.inherited !== '' ? { placeholder: props.inherited } : {})}
        size={12}
        value={part.partNumber}
        onChange={(partNumber) => set({ partNumber })}
        isCode
        isRequired
      />
      <TextField
        name={part.isUnreadable ? `parts/${at}/unreadable` : `parts/${at}/serial`}
        label="Serial"
        size={12}
        value={part.serial}
        isDisabled={part.isUnreadable}
        onChange={(serial) => set({ serial })}
        isCode
        isRequired
        after={
          <Checkbox
            aria-label={`${title}: not readable yet`}
            isSelected={part.isUnreadable}
            onChange={(isUnreadable) => set({ isUnreadable, serial: '' })}
          >
            not readable yet
          </Checkbox>
        }
      />
      <HoursField
        name={`parts/${at}/sinceNewTenths`}
        label="Since new"
        value={part.sinceNew}
        onChange={(sinceNew) => set({ sinceNew })}
      />
      <HoursField
        name={`parts/${at}/sinceOverhaulTenths`}
        label="Since overhaul"
        value={part.sinceOverhaul}
        onChange={(sinceOverhaul) => set({ sinceOverhaul })}
      />
      <HoursField
        name={`parts/${at}/sinceNewCycles`}
        label="Cycles since new"
        counts="cycles"
        value={part.cyclesSinceNew}
        onChange={(cyclesSinceNew) => set({ cyclesSinceNew })}
      />
    </fieldset>
  );
}

/** Hub and blades, each with a number, a serial and hours of its own. What cannot be read closes only the door of release. */
export function ArrivingParts({ draft, set }: ArrivingProps) {
  if (draft.parts.length === 0) return null;
  const change = (at: number, changes: Partial<PartDraft>) =>
    set({ parts: draft.parts.map((part, place) => (place === at ? { ...part, ...changes } : part)) });
  return (
    <section className="field-group stack" aria-label="Hub and blades">
      <h2>Hub and blades</h2>
      <p className="soft small">
        A serial that is not readable yet is confirmed by an inspector after stripping, before release. An empty blade
        part number goes by the first blade’s.
      </p>
      {draft.parts.map((part, at) => (
        <PartRow
          key={part.position}
          at={at}
          part={part}
          inherited={partNumberAt(draft.parts, at)}
          set={(changes) => change(at, changes)}
        />
      ))}
    </section>
  );
}
