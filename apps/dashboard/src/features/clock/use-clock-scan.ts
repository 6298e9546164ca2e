import { unitOperations } from '@hubwright/contracts/units/operations';
import { clockOperations } from '@hubwright/contracts/work-orders/clock-operations';
import { call } from '../../api/call.ts';
import { useCommand } from '../../api/command.ts';
import { useMay } from '../../api/me.ts';
import { ProblemError } from '../../api/problem.ts';
import { useNavigateTo } from '../../ui/Link.tsx';
import { say } from '../../ui/toasts.tsx';
import { asStepCode, isClockOut } from './clock.ts';

/** Takes the barcode of a step, which starts one's clock there and opens it, and the one that ends it. */
export function useClockScan(): (code: string) => boolean {
  const mayClock = useMay(clockOperations.startClock);
  const start = useCommand(clockOperations.startClock);
  const stop = useCommand(clockOperations.stopClock);
  const navigate = useNavigateTo();
  const tell = ({ facts }: ProblemError) => say(`No, because: ${facts.detail || facts.title}. ${facts.next}`);

  async function open(code: string): Promise<void> {
    try {
      const { rows } = await call(unitOperations.find, { text: code });
      const [step] = rows;
      if (!step) return say(`${code} is no step of a traveler here.`);
      navigate(step.path);
      start.mutate(
        { input: { stepId: step.id } },
        { onSuccess: () => say(`Your clock runs on “${step.title}”.`), onError: tell },
      );
    } catch (error) {
      if (!(error instanceof ProblemError)) throw error;
      tell(error);
    }
  }

  return (code) => {
    if (!mayClock) return false;
    if (isClockOut(code)) {
      stop.mutate({ input: {} }, { onSuccess: () => say('Your clock stopped.'), onError: tell });
      return true;
    }
    const step = asStepCode(code);
    if (step) void open(step);
    return step !== undefined;
  };
}
