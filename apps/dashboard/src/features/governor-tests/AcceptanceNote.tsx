import { RuleError } from '@hubwright/rules/errors';
import { acceptedPoints } from '@hubwright/rules/governor';
import { useQuery } from '@tanstack/react-query';
import { useMe } from '../../api/me.ts';
import { benchesQuery, type Program } from './governor.ts';

/** How readings on the chosen bench will be accepted, or why none would be; said before the run begins. */
export function AcceptanceNote({ program, instrumentId }: { program: Program; instrumentId: string | null }) {
  const { guardBand } = useMe().shop;
  const bench = useQuery(benchesQuery).data?.rows.find(({ id }) => id === instrumentId);
  if (guardBand === 'none' || !bench) return null;
  const own = bench.uncertainty !== null && bench.unit !== null;
  const doubts = [
    ...(own ? [{ uncertainty: bench.uncertainty ?? '', unit: bench.unit ?? '' }] : []),
    ...bench.moreDoubts,
  ];
  try {
    acceptedPoints(program.content.points, doubts, guardBand);
    const words = doubts.map(({ uncertainty, unit }) => `± ${uncertainty} ${unit}`).join(', ');
    return (
      <p className="small">Readings are accepted inside the manual’s limits: {`${bench.tag} is known to ${words}`}.</p>
    );
  } catch (error) {
    if (!(error instanceof RuleError)) throw error;
    return <p className="field-error">{`${bench.tag} cannot be used: ${error.message}`}</p>;
  }
}
