import { Button } from '../../ui/Button.tsx';
import { DecimalField } from '../../ui/DecimalField.tsx';
import { FieldGroup } from '../../ui/FieldGroup.tsx';
import { TextField } from '../../ui/TextField.tsx';

/** What a certificate says of one quantity: expanded uncertainty, k = 2. */
export interface DoubtDraft {
  readonly uncertainty: string;
  readonly unit: string;
}

/** As the command takes them: the first is the instrument's own, the others are what a bench knows of further quantities. */
export function doubtInput(doubts: readonly DoubtDraft[]) {
  const [first, ...more] = doubts.filter(({ uncertainty, unit }) => uncertainty !== '' || unit !== '');
  return first ? { ...first, moreDoubts: more } : {};
}

const nameOf = (index: number, field: string) => (index === 0 ? field : `moreDoubts/${index - 1}/${field}`);

/** How well the certificate says it measures; a bench that measures several quantities has one of each. */
export function DoubtFields(props: {
  doubts: readonly DoubtDraft[];
  onChange: (doubts: readonly DoubtDraft[]) => void;
}) {
  const { doubts, onChange } = props;
  const put = (index: number, change: Partial<DoubtDraft>) =>
    onChange(doubts.map((one, place) => (place === index ? { ...one, ...change } : one)));
  return (
    <FieldGroup title="Known to, as the certificate says (k = 2)">
      {doubts.map(({ uncertainty, unit }, index) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: rows are only added at the end
        <div key={index} className="row">
          <DecimalField
            name={nameOf(index, 'uncertainty')}
            label={index === 0 ? 'Known to ±' : `Known to ±, ${index + 1}`}
            value={uncertainty}
            onChange={(text) => put(index, { uncertainty: text })}
          />
          <TextField
            name={nameOf(index, 'unit')}
            label={index === 0 ? 'In the unit' : `In the unit, ${index + 1}`}
            value={unit}
            onChange={(text) => put(index, { unit: text })}
          />
        </div>
      ))}
      <p className="soft small">Left empty, what was on record stays.</p>
      <Button weight="quiet" onPress={() => onChange([...doubts, { uncertainty: '', unit: '' }])}>
        It measures another quantity too
      </Button>
    </FieldGroup>
  );
}
