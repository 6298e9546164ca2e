import { Select, type SelectProps } from '../../ui/Select.tsx';
import styles from './front-desk.module.css';

/** A filter above a table: its label beside it, so that the row stays one line high. */
export function InlineSelect<V extends string>(props: SelectProps<V>) {
  return (
    <div className={styles.inline}>
      <Select {...props} />
    </div>
  );
}
