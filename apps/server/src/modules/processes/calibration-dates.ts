import { Problem } from '@hubwright/contracts/problems';

/** Throws `calibration-dates-wrong` when the calibration is still to come or its last good day lies before it. */
export function refuseWrongDates(dates: { calibratedOn: string; calibrationDueOn: string }, today: string): void {
  if (dates.calibratedOn > today) throw wrong('/calibratedOn', `${dates.calibratedOn} is still to come`);
  if (dates.calibrationDueOn <= dates.calibratedOn)
    throw wrong('/calibrationDueOn', 'The last good day lies after the day of calibration');
}

function wrong(pointer: string, detail: string): Problem {
  return new Problem('calibration-dates-wrong', detail, {}, [{ pointer, detail }]);
}
