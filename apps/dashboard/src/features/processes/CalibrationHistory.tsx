import { processOperations } from '@hubwright/contracts/processes/operations';
import { useQuery } from '@tanstack/react-query';
import { queryFor } from '../../api/query.ts';
import { countOf } from '../../format/numbers.ts';
import { DateText, InstantText } from '../../format/values.tsx';
import { Link } from '../../ui/Link.tsx';
import { StateMark } from '../../ui/StateMark.tsx';
import { DriftCharts } from './DriftCharts.tsx';

/** Every calibration on record, the newest first: what was signed with this instrument was signed between two of them. */
export function CalibrationHistory({ instrumentId, unit }: { instrumentId: string; unit: string | null }) {
  const rows = useQuery(queryFor(processOperations.listCalibrations, { instrumentId })).data?.rows;
  if (!rows || rows.length === 0) return null;
  return (
    <>
      <DriftCharts rows={rows} unit={unit} />
      <section className="stack tight" aria-labelledby="calibrations">
        <h3 id="calibrations">Calibrations</h3>
        <ul className="lines small">
          {rows.map((row) => (
            <li key={row.entryId}>
              <span>
                <DateText date={row.calibratedOn} />, good until <DateText date={row.calibrationDueOn} />
                {row.certificate === '' ? ', no certificate named' : `, certificate ${row.certificate}`}
                {row.inService ? '' : ', taken out of service'}
                {row.asFound === 'out' ? (
                  <>
                    <br />
                    <StateMark state="stop" word="found out of tolerance" />{' '}
                    <Link href={`/calibration-reviews?instrument=${instrumentId}&show=all`}>
                      {countOf(row.reviews, 'sign-off')} under review
                    </Link>
                  </>
                ) : null}
                {row.points.length > 0 ? (
                  <>
                    <br />
                    {row.points
                      .map(
                        (point) => `${point.nominal}: found ${point.asFound}, left ${point.asLeft}, ± ${point.allowed}`,
                      )
                      .join('; ')}
                  </>
                ) : null}
                <br />
                <span className="soft">
                  entered by {row.personName}, <InstantText instant={row.at} />
                </span>
              </span>
            </li>
          ))}
        </ul>
      </section>
    </>
  );
}
