import { useQuery } from '@tanstack/react-query';
import { formatDate } from '../../format/dates.ts';
import { Select } from '../../ui/Select.tsx';
import { benchesQuery } from './governor.ts';

/** The bench the governor is on. One past its calibration is listed and said so; the server refuses it. */
export function BenchField({ value, onChange }: { value: string | null; onChange: (instrumentId: string) => void }) {
  const rows = useQuery(benchesQuery).data?.rows ?? [];
  const choices = rows
    .filter(({ inService }) => inService)
    .map(({ id, tag, title, inCalibration, calibrationDueOn }) => ({
      value: id,
      text: `${tag} ${title}, ${inCalibration ? 'calibrated until' : 'OVERDUE since'} ${formatDate(calibrationDueOn)}`,
    }));
  return (
    <Select
      name="instrumentId"
      label="Bench"
      value={value}
      onChange={onChange}
      choices={choices}
      isRequired
      placeholder="Choose the one it is on"
    />
  );
}
