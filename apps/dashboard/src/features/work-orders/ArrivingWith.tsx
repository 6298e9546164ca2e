import { expectedPapers, papers } from '@hubwright/contracts/work-orders/states';
import { Button } from '../../ui/Button.tsx';
import { Checkbox, CheckboxList } from '../../ui/Checkbox.tsx';
import { DateField } from '../../ui/DateField.tsx';
import { DecimalField } from '../../ui/DecimalField.tsx';
import { FieldGroup } from '../../ui/FieldGroup.tsx';
import { StateMark } from '../../ui/StateMark.tsx';
import { TextField } from '../../ui/TextField.tsx';
import type { ArrivingProps } from './ArrivingWho.tsx';
import type { LooseDraft } from './arrival-draft.ts';
import styles from './arriving.module.css';
import { paperWords } from './order-words.ts';

const usual = ['Shipping box', 'Spinner dome', 'Bracket', 'Mounting nuts', 'Logbook'];

/** Which papers came; what is missing of those that should is said, not refused. */
export function PaperFields({ draft, set }: ArrivingProps) {
  const missing = expectedPapers.filter((paper) => !draft.paperwork.includes(paper));
  return (
    <FieldGroup title="Papers">
      <CheckboxList
        name="paperwork"
        label="Came with it"
        value={draft.paperwork}
        onChange={(paperwork) => set({ paperwork })}
        choices={papers.map((value) => ({ value, text: paperWords[value] }))}
      />
      <TextField
        name="paperworkNote"
        label="About the papers"
        lines={2}
        value={draft.paperworkNote}
        onChange={(paperworkNote) => set({ paperworkNote })}
      />
      {missing.length > 0 ? (
        <StateMark
          state="hold"
          word={`to ask for: ${missing.map((paper) => paperWords[paper].toLowerCase()).join(', ')}`}
        />
      ) : null}
    </FieldGroup>
  );
}

function LooseRow(props: {
  at: number;
  item: LooseDraft;
  set: (changes: Partial<LooseDraft>) => void;
  onDrop: () => void;
}) {
  const { at, item, set } = props;
  return (
    <div className={styles.loose}>
      <DecimalField
        name={`looseItems/${at}/quantity`}
        label="How many"
        size={4}
        decimals={0}
        value={item.quantity}
        onChange={(quantity) => set({ quantity })}
        isRequired
      />
      <TextField
        name={`looseItems/${at}/description`}
        label="What"
        value={item.description}
        onChange={(description) => set({ description })}
        isRequired
      />
      <Button weight="quiet" onPress={props.onDrop} aria-label={`Leave out ${item.description || 'this item'}`}>
        Leave out
      </Button>
    </div>
  );
}

/** Everything loose that came in the box, so that each can be proved to have gone back. */
export function LooseFields({ draft, set }: ArrivingProps) {
  const items = draft.looseItems;
  const add = (description: string) => set({ looseItems: [...items, { description, quantity: '1' }] });
  return (
    <section className="field-group stack" aria-label="Loose items">
      <h2>Loose items</h2>
      {items.map((item, at) => (
        <LooseRow
          // biome-ignore lint/suspicious/noArrayIndexKey: a row has nothing else of its own while it is typed
          key={at}
          at={at}
          item={item}
          set={(changes) =>
            set({ looseItems: items.map((each, place) => (place === at ? { ...each, ...changes } : each)) })
          }
          onDrop={() => set({ looseItems: items.filter((_, place) => place !== at) })}
        />
      ))}
      <div className="row">
        {usual
          .filter((name) => !items.some((item) => item.description === name))
          .map((name) => (
            <Button key={name} onPress={() => add(name)}>
              {name}
            </Button>
          ))}
        <Button onPress={() => add('')}>Something else</Button>
      </div>
    </section>
  );
}

/** When it came, and whether it goes before others. */
export function DayFields({ draft, set }: ArrivingProps) {
  return (
    <FieldGroup title="Day and haste">
      <DateField
        name="receivedOn"
        label="Received on"
        hint="Empty: today"
        value={draft.receivedOn}
        onChange={(receivedOn) => set({ receivedOn })}
      />
      <Checkbox isSelected={draft.isUrgent} onChange={(isUrgent) => set({ isUrgent })}>
        The aircraft stands on the ground for it
      </Checkbox>
    </FieldGroup>
  );
}
