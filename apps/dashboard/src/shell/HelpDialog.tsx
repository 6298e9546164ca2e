import { Dialog } from '../ui/Dialog.tsx';
import { KeyHint } from '../ui/KeyHint.tsx';

const keys: readonly [string, string][] = [
  ['/', 'Find a serial, work order, customer, part or person'],
  ['?', 'Show this list'],
  ['Tab', 'Next control; Shift and Tab for the one before'],
  ['↑ ↓', 'Walk the rows of a table, the lines of a list, the positions of a drawing'],
  ['Enter', 'Open the row, press the button, send the form'],
  ['Esc', 'Close a list or a dialog'],
];

export function HelpDialog({ isOpen, onClose }: { isOpen: boolean; onClose: () => void }) {
  return (
    <Dialog title="Keys and scanning" isOpen={isOpen} onClose={onClose}>
      <div className="stack">
        <dl className="key-list">
          {keys.map(([key, what]) => (
            <div key={key}>
              <dt>
                <KeyHint keys={key} />
              </dt>
              <dd>{what}</dd>
            </div>
          ))}
        </dl>
        <p>
          A barcode scanner works on every page without touching anything first. A view that can use the code takes it;
          otherwise the thing it names is opened. While an entry has the focus, the scan is typed into it.
        </p>
      </div>
    </Dialog>
  );
}
