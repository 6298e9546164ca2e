import { countOperations } from '@hubwright/contracts/inventory/count-operations';
import { useCommand } from '../../api/command.ts';
import { Button } from '../../ui/Button.tsx';
import { Refusal } from '../../ui/Refusal.tsx';
import { say } from '../../ui/toasts.tsx';

/** Takes a bin to count it, or gives it back: one person counts a bin at a time. */
export function BinCountButtons({ bin, counting }: { bin: string; counting: string | null }) {
  const begin = useCommand(countOperations.beginBinCount);
  const end = useCommand(countOperations.endBinCount);
  const problem = begin.error ?? end.error;
  return (
    <>
      {counting === null ? (
        <Button
          weight="next"
          isPending={begin.isPending}
          onPress={() => begin.mutate({ input: { bin } }, { onSuccess: () => say(`You count bin ${bin}.`) })}
        >
          Begin counting {bin}
        </Button>
      ) : (
        <Button
          isPending={end.isPending}
          onPress={() => end.mutate({ input: { bin } }, { onSuccess: () => say(`Bin ${bin} is free again.`) })}
        >
          End counting {bin}
        </Button>
      )}
      {problem ? <Refusal problem={problem} /> : null}
    </>
  );
}
