import {
  Button,
  Text,
  UNSTABLE_Toast as Toast,
  UNSTABLE_ToastContent as ToastContent,
  UNSTABLE_ToastQueue as ToastQueue,
  UNSTABLE_ToastRegion as ToastRegion,
} from 'react-aria-components';

interface Said {
  readonly text: string;
  /** Where the trade allows it: takes the thing back. */
  readonly undo?: () => void;
}

/** The last message without an undo: the next one takes its place instead of lining up behind it. */
let plain: string | undefined;

const queue = new ToastQueue<Said>({ maxVisibleToasts: 2 });

/** Says that something was done, aloud too, and offers to take it back where that is allowed. Refusals never go here: they stay with the form. */
export function say(text: string, undo?: () => void): void {
  if (plain !== undefined) queue.close(plain);
  const key = queue.add(undo ? { text, undo } : { text }, { timeout: undo ? 12_000 : 6_000 });
  plain = undo ? undefined : key;
}

export function Toasts() {
  return (
    <ToastRegion queue={queue} className="toasts" aria-label="What was just done">
      {({ toast }) => (
        <Toast toast={toast} className="toast">
          <ToastContent>
            <Text slot="title">{toast.content.text}</Text>
          </ToastContent>
          {toast.content.undo ? (
            <Button
              className="button plain"
              onPress={() => {
                toast.content.undo?.();
                queue.close(toast.key);
              }}
            >
              Undo
            </Button>
          ) : null}
          <Button slot="close" className="button quiet">
            Close
          </Button>
        </Toast>
      )}
    </ToastRegion>
  );
}
