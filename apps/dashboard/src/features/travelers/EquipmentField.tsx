import type { EquipmentKind } from '@hubwright/contracts/manuals/words';
import { useQuery } from '@tanstack/react-query';
import { Select } from '../../ui/Select.tsx';
import { StateMark } from '../../ui/StateMark.tsx';
import { equipmentQuery } from './traveler.ts';

/** The tank or test system used. One that is shut is listed and said so; work of an earlier time is judged by what held then. */
export function EquipmentField(props: {
  kind: EquipmentKind;
  value: string | null;
  onChange: (equipmentId: string) => void;
}) {
  const rows = (useQuery(equipmentQuery(props.kind)).data?.rows ?? []).filter(({ inService }) => inService);
  const chosen = rows.find(({ id }) => id === props.value);
  const what = props.kind.replaceAll('-', ' ');
  return (
    <div className="stack tight">
      <Select
        name="equipmentId"
        label={`Which ${what}`}
        value={props.value}
        onChange={props.onChange}
        choices={rows.map(({ id, code, title, shut }) => ({
          value: id,
          text: `${code} ${title}${shut ? ', NOT FIT NOW' : ''}`,
        }))}
        isRequired
        placeholder="Choose the one you work with"
      />
      {(chosen ? [chosen] : rows).map(({ id, shut }) =>
        shut ? (
          <p key={id} className="small">
            <StateMark state="stop" word={shut} />
          </p>
        ) : null,
      )}
    </div>
  );
}
