import type { StaticBalanceSheet } from '@hubwright/contracts/manuals/static-balance-sheet';
import { limitText, type StaticAdvice } from '@hubwright/rules/balance';
import { Checkbox } from '../../../ui/Checkbox.tsx';
import { PropellerFront } from '../../../ui/pictures/PropellerFront.tsx';
import { StateMark } from '../../../ui/StateMark.tsx';
import { StaticPlaceFields } from './StaticPlaceFields.tsx';
import { StaticReadingFields } from './StaticReadingFields.tsx';
import type { SheetFieldsProps } from './sheet-form.ts';
import { adviceOf, frontOf, type StaticBalanceDraft } from './static-balance-draft.ts';

function Advice({ advice, spec }: { advice: StaticAdvice | string | undefined; spec: StaticBalanceSheet }) {
  if (advice === undefined) return <p className="soft">Read it both ways: what levels it follows.</p>;
  if (typeof advice === 'string') return <StateMark state="stop" word={advice} />;
  const { fillings, left, reachable, sentence } = advice;
  if (!reachable) return <StateMark state="stop" word={sentence} />;
  const pieces = fillings.flatMap(({ place, pieces: each }) =>
    each.map(({ part, count }) => `${count} × ${part} at ${place}`),
  );
  return (
    <p>
      <strong>{pieces.length > 0 ? `In all it would have ${pieces.join(', ')}` : 'It needs no weights'}</strong>
      {`: ${left.mass.toFixed(2)} ${spec.unit} would be left.`}
    </p>
  );
}

/** The room of every place, where it is the same in all. */
function roomWords({ places, unit }: StaticBalanceSheet): string {
  const rooms = new Set(
    places.map(({ pieces, stack }) => `${pieces} pieces${stack ? ` or ${stack} ${unit.split('-')[1]} of stack` : ''}`),
  );
  return rooms.size === 1 ? `Each place takes up to ${[...rooms][0]}.` : '';
}

/** Read both ways, weights in the places there are, read again: the propeller from the front shows what is where. */
export function StaticBalanceFields(props: SheetFieldsProps<'static-balance', StaticBalanceDraft>) {
  const { draft, onChange } = props;
  const { spec } = props.about;
  const advice = adviceOf(draft, spec);
  const limit = `${limitText(spec)} ${spec.unit} may be left ${spec.limit.by === 'manual' ? 'each way, by the manual' : `in all, G ${spec.limit.grade} of ISO 21940-11`}`;
  return (
    <>
      <p>{limit}.</p>
      <StaticReadingFields when="before" draft={draft} spec={spec} onChange={onChange} />
      {spec.places.length > 0 ? (
        <>
          <Checkbox isSelected={draft.hadWeights} onChange={(hadWeights) => onChange({ ...draft, hadWeights })}>
            Static weights were on it then
          </Checkbox>
          {draft.hadWeights ? (
            <StaticPlaceFields
              title="On it as it stood"
              name="found"
              spec={spec}
              counts={draft.found}
              onChange={(found) => onChange({ ...draft, found })}
            />
          ) : null}
        </>
      ) : null}
      <div aria-live="polite">
        <Advice advice={advice} spec={spec} />
      </div>
      <figure className="polar">
        <PropellerFront title="Static weights, seen from the front" {...frontOf(spec, draft, advice)} />
        <figcaption className="small">
          Seen from the front, blade 1 up; angles count clockwise from it. Filled: on it. Dashed: proposed.{' '}
          {roomWords(spec)}
        </figcaption>
      </figure>
      {spec.places.length > 0 ? (
        <StaticPlaceFields
          title="Static weights on it now"
          name="placed"
          spec={spec}
          counts={draft.placed}
          advice={advice}
          onChange={(placed) => onChange({ ...draft, placed })}
        />
      ) : null}
      <StaticReadingFields when="after" draft={draft} spec={spec} onChange={onChange} />
    </>
  );
}
