import { HolidaySheet } from '../../features/people/HolidaySheet.tsx';
import { ShiftSheet } from '../../features/people/ShiftSheet.tsx';
import styles from './administration.module.css';

/** Left the shifts, right the days the shop is closed. */
export function WorkingTimePage() {
  return (
    <div className={styles.beside}>
      <ShiftSheet />
      <HolidaySheet />
    </div>
  );
}
