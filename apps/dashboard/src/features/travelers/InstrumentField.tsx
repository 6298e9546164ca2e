import type { InstrumentKind } from '@hubwright/contracts/manuals/words';
import { useQuery } from '@tanstack/react-query';
import { formatDate } from '../../format/dates.ts';
import { Select } from '../../ui/Select.tsx';
import { instrumentsQuery } from './traveler.ts';

/** The instrument used. Those past their calibration are listed and said so; the server refuses them. */
export function InstrumentField(props: {
  kind: InstrumentKind;
  value: string | null;
  onChange: (instrumentId: string) => void;
}) {
  const rows = useQuery(instrumentsQuery(props.kind)).data?.rows ?? [];
  const choices = rows
    .filter((each) => each.inService)
    .map((each) => ({
      value: each.id,
      text: `${each.tag} ${each.title}, ${each.inCalibration ? 'calibrated until' : 'OVERDUE since'} ${formatDate(each.calibrationDueOn)}`,
    }));
  return (
    <Select
      name="instrumentId"
      label={`Instrument used (${props.kind.replaceAll('-', ' ')})`}
      value={props.value}
      onChange={props.onChange}
      choices={choices}
      isRequired
      placeholder="Choose the one in your hand"
    />
  );
}
