import { unitHistoryOperations } from '@hubwright/contracts/units/unit-history-operations';
import { useMay } from '../../api/me.ts';

/** The whole history of a unit to hand over: to read, and to be read by a program. */
export function TakeHistory({ itemId }: { itemId: string }) {
  const mayTake = useMay(unitHistoryOperations.wholeUnitHistory);
  if (!mayTake) return null;
  return (
    <p className="row">
      Whole history:
      <a href={`/api/units/${itemId}/whole-history/pdf`} target="_blank" rel="noreferrer">
        as PDF
      </a>
      <a href={`/api/units/${itemId}/whole-history`} download={`history-${itemId}.json`}>
        as JSON
      </a>
    </p>
  );
}
