import { limitsInWords, outside, type ValueAsked, whyImpossible } from '@hubwright/rules/function-test';
import { DecimalField } from '../../../ui/DecimalField.tsx';
import { FieldGroup } from '../../../ui/FieldGroup.tsx';
import { Select } from '../../../ui/Select.tsx';
import { StateMark } from '../../../ui/StateMark.tsx';
import { shownValues } from './function-test-asked.ts';
import { SheetGrid } from './SheetGrid.tsx';
import type { SheetFieldsProps } from './sheet-form.ts';

/** A function test as it is being written down; values by what they are of. */
export interface FunctionTestDraft {
  readonly medium: string | null;
  readonly cycles: string;
  readonly values: Readonly<Record<string, string>>;
}

type Props = SheetFieldsProps<'function-test', FunctionTestDraft>;

/** Where a typed value stands, in a word. */
function markOf(asked: ValueAsked, text: string) {
  if (text === '') return { state: 'open', word: 'to read' } as const;
  if (whyImpossible(asked, text)) return { state: 'stop', word: 'cannot be read so' } as const;
  return outside(asked, text)
    ? ({ state: 'stop', word: 'outside' } as const)
    : ({ state: 'passed', word: 'inside' } as const);
}

function boxOf({ about, draft, onChange }: Props, asked: ValueAsked) {
  const value = draft.values[asked.path] ?? '';
  return {
    name: `sheet/values/${shownValues(about).findIndex(({ path }) => path === asked.path)}/value`,
    value,
    onChange: (text: string) => onChange({ ...draft, values: { ...draft.values, [asked.path]: text } }),
    mark: markOf(asked, value),
  };
}

function Single({ asked, of }: { asked: ValueAsked; of: Props }) {
  const { mark, ...box } = boxOf(of, asked);
  const label = asked.name.charAt(0).toUpperCase() + asked.name.slice(1);
  return (
    <div>
      <DecimalField {...box} label={label} hint={limitsInWords(asked)} unit={asked.unit} decimals={6} isRequired />
      <StateMark {...mark} />
    </div>
  );
}

function Leak(props: Props) {
  const { about, draft, onChange } = props;
  const { leak } = about.spec;
  if (!leak) return null;
  return (
    <FieldGroup title="Leak test">
      <Select
        name="sheet/medium"
        label="Tested with"
        value={draft.medium}
        onChange={(medium) => onChange({ ...draft, medium })}
        choices={leak.media.map((medium) => ({ value: medium, text: medium }))}
        isRequired
      />
      <DecimalField
        name="sheet/cycles"
        label="Cycled under pressure"
        hint={`${leak.cycles} times at least, stop to stop`}
        unit="times"
        decimals={0}
        value={draft.cycles}
        onChange={(cycles) => onChange({ ...draft, cycles })}
        isRequired
      />
      {shownValues(about)
        .filter(({ path }) => path.startsWith('leak/'))
        .map((asked) => (
          <Single key={asked.path} asked={asked} of={props} />
        ))}
    </FieldGroup>
  );
}

/** What is read of each blade: the four ways of play, and what it takes to turn it. */
function Blades(props: Props) {
  const { blades, play = [], friction } = props.about.spec;
  const values = shownValues(props.about);
  const kinds = [...play.map(({ direction }) => `play/${direction}`), ...(friction ? ['friction'] : [])];
  if (kinds.length === 0) return null;
  const askedOf = (kind: string, blade: number) => {
    const [what, direction] = kind.split('/');
    const path = direction ? `${what}/${blade}/${direction}` : `${what}/${blade}`;
    return values.find((one) => one.path === path) as ValueAsked;
  };
  const rows = Array.from({ length: blades }, (_, index) => index + 1);
  return (
    <SheetGrid
      caption={play.length > 0 ? 'Play and friction of each blade' : 'Friction of each blade'}
      corner="Blade"
      columns={kinds.map((kind) => ({
        ...{ key: kind, head: kind.replace('play/', 'play ').replaceAll('-', ' ') },
        limits: limitsInWords(askedOf(kind, 1)),
      }))}
      rows={rows.map((blade) => ({
        ...{ key: String(blade), head: String(blade) },
        cells: kinds.map((kind) => {
          const asked = askedOf(kind, blade);
          return { ...boxOf(props, asked), label: `${asked.name}, ${asked.unit}` };
        }),
      }))}
    />
  );
}

function Travel(props: Props) {
  const values = shownValues(props.about).filter(({ path }) => path.startsWith('travel/'));
  if (values.length === 0) return null;
  return (
    <FieldGroup title="From stop to stop">
      {values.map((asked) => (
        <Single key={asked.path} asked={asked} of={props} />
      ))}
    </FieldGroup>
  );
}

/** The function test of a built propeller, value by value, judged while it is typed. */
export function FunctionTestFields(props: Props) {
  return (
    <>
      <Leak {...props} />
      <Blades {...props} />
      <Travel {...props} />
    </>
  );
}
