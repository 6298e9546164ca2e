import { DecimalField } from '../../ui/DecimalField.tsx';
import { LimitGauge } from '../../ui/pictures/LimitGauge.tsx';
import { bandOf, type Lot } from './peening.ts';

/** Arc heights by area, as they are read. */
export type Heights = Readonly<Record<string, string>>;

export function readingsOf({ areas }: Lot['spec'], heights: Heights) {
  return areas.map(({ name }) => ({ area: name, arcHeight: heights[name] ?? '' }));
}

/** One net arc height for each area, its band drawn beside it. Every box starts empty. */
export function StripFields(props: {
  spec: Lot['spec'];
  name: string;
  heights: Heights;
  onChange: (heights: Heights) => void;
}) {
  const { spec, heights } = props;
  return (
    <div className="stack tight">
      {spec.areas.map((area, index) => (
        <div key={area.name} className="row">
          <DecimalField
            name={`${props.name}/${index}/arcHeight`}
            label={`Strip, ${area.name}`}
            hint={`${bandOf(area)}${area.positions.length > 0 ? `, at station ${area.positions.join(', ')}` : ''}`}
            unit={area.unit}
            decimals={5}
            value={heights[area.name] ?? ''}
            onChange={(text) => props.onChange({ ...heights, [area.name]: text })}
            isRequired
          />
          <LimitGauge value={heights[area.name] || null} low={area.low} high={area.high} unit={area.unit} />
        </div>
      ))}
    </div>
  );
}
