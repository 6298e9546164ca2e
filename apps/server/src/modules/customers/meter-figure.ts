import { measureOf } from '@hubwright/contracts/customers/operations';
import { Problem } from '@hubwright/contracts/problems';

interface Figures {
  readonly hoursTenths?: number | undefined;
  readonly cycles?: number | undefined;
}

/** Which of the two a meter is read in. */
export function figureField(meter: string): keyof Figures {
  return measureOf(meter) === 'cycles' ? 'cycles' : 'hoursTenths';
}

/** What a meter read, in what it counts. Throws `invalid-input` where the other was given, or neither. */
export function figureSaid(meter: string, said: Figures, base = ''): number {
  const field = figureField(meter);
  const figure = said[field];
  const other = field === 'cycles' ? said.hoursTenths : said.cycles;
  if (figure !== undefined && other === undefined) return figure;
  const detail = field === 'cycles' ? 'This meter counts cycles, whole ones' : 'This meter counts hours';
  throw new Problem('invalid-input', detail, {}, [{ pointer: `${base}/${field}`, detail }]);
}

/** What a meter showed, as the contract tells it. */
export function figureShown(meter: string, figure: number): { hoursTenths: number | null; cycles: number | null } {
  return measureOf(meter) === 'cycles' ? { hoursTenths: null, cycles: figure } : { hoursTenths: figure, cycles: null };
}

/** A figure in words. */
export function figureWords(meter: string, figure: number): string {
  return measureOf(meter) === 'cycles' ? `${figure} cycles` : `${(figure / 10).toFixed(1)} h`;
}
