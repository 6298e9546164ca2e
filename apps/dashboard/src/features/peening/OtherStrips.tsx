import { onOtherStrips } from '@hubwright/rules/peening';
import { type Lot, unitOf } from './peening.ts';

type Area = Pick<Lot['spec']['areas'][number], 'strip' | 'unit'>;

/** What other strips would about show: to understand a band by, never to judge by, and never kept. */
export function OtherStrips({ area, net }: { area: Area; net: string }) {
  const { about, use } = onOtherStrips(area.strip, Number(net), unitOf(area));
  const words = about.map(({ strip, arcHeight }) => `${arcHeight.toFixed(4)} ${area.unit} on ${strip}`).join(', ');
  return (
    <span className="soft small">
      about {words}: guidance only
      {use ? `; an intensity for ${use} strips` : ''}
    </span>
  );
}
