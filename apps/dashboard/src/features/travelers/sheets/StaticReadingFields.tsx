import type { StaticBalanceSheet } from '@hubwright/contracts/manuals/static-balance-sheet';
import { RadioList } from '../../../ui/Checkbox.tsx';
import { DecimalField } from '../../../ui/DecimalField.tsx';
import { FieldGroup } from '../../../ui/FieldGroup.tsx';
import type { ReadingDraft, StaticBalanceDraft } from './static-balance-draft.ts';

const positions = {
  vertical: {
    title: 'Blade 1 up',
    choices: [
      { value: 'right', text: 'The right is heavy' },
      { value: 'left', text: 'The left is heavy' },
      { value: 'level', text: 'Level' },
    ],
  },
  horizontal: {
    title: 'Blade 1 to the right, level',
    choices: [
      { value: 'blade-1', text: 'Blade 1 is heavy' },
      { value: 'opposite', text: 'The other side is heavy' },
      { value: 'level', text: 'Level' },
    ],
  },
} as const;

interface Props {
  when: 'before' | 'after';
  draft: StaticBalanceDraft;
  spec: StaticBalanceSheet;
  onChange: (draft: StaticBalanceDraft) => void;
}

/** Both ways of standing, as seen from the front: the heavy side, and what levels it on the other. */
export function StaticReadingFields({ when, draft, spec, onChange }: Props) {
  return (['vertical', 'horizontal'] as const).map((position) => {
    const reading = draft[when][position];
    const change = (more: Partial<ReadingDraft>) =>
      onChange({ ...draft, [when]: { ...draft[when], [position]: { ...reading, ...more } } });
    const path = `sheet/${when}/${position}`;
    const { title, choices } = positions[position];
    return (
      <FieldGroup key={position} title={`${title}, ${when === 'before' ? 'as it stands' : 'with its weights'}`}>
        <RadioList
          name={`${path}/heavy`}
          label="Seen from the front"
          value={reading.heavy}
          onChange={(heavy) => change({ heavy })}
          choices={choices}
          isRequired
        />
        {reading.heavy !== null && reading.heavy !== 'level' ? (
          <LevelFields path={path} unit={spec.unit} reading={reading} onChange={change} />
        ) : null}
      </FieldGroup>
    );
  });
}

/** The weight that levels it, and where it hangs. */
function LevelFields(props: {
  path: string;
  unit: StaticBalanceSheet['unit'];
  reading: ReadingDraft;
  onChange: (more: Partial<ReadingDraft>) => void;
}) {
  const { path, reading, onChange } = props;
  const [mass = '', length = ''] = props.unit.split('-');
  return (
    <>
      <DecimalField
        name={`${path}/weight`}
        label="Levelled by"
        hint="Hung on the light side"
        unit={mass}
        value={reading.weight}
        onChange={(weight) => onChange({ weight })}
        isRequired
      />
      <DecimalField
        name={`${path}/radius`}
        label="At a radius of"
        hint="From the hub centre"
        unit={length}
        value={reading.radius}
        onChange={(radius) => onChange({ radius })}
        isRequired
      />
    </>
  );
}
