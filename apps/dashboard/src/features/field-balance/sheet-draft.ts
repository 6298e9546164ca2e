import { useState } from 'react';

/** What is looked at before the engine runs, each confirmed by itself. */
export const points = {
  tiedDown: 'Aircraft chocked and tied down',
  areaClear: 'Propeller plane and slipstream clear of people and loose things',
  cowlingClosed: 'Cowling closed or secured as the procedure says',
  brakesSet: 'Brakes set, somebody at the controls',
  observerPosted: 'Observer posted, signals agreed',
} as const;
export type Point = keyof typeof points;
const unchecked: Record<Point, boolean> = {
  ...{ tiedDown: false, areaClear: false, cowlingClosed: false, brakesSet: false, observerPosted: false },
};
const emptyWords = { procedure: '', weather: '', wind: '', sensorPlace: '', phaseReference: '' };
interface SensorDraft {
  readonly sensorPlace: string;
  readonly sensorAxis: 'vertical' | 'horizontal' | null;
}
type FoundDraft = { place: string; mass: string; stays: boolean };

/** Everything on the sheet as it is filled in; nothing of it is filled in for anyone. */
export function useSheet() {
  const [words, setWords] = useState(emptyWords);
  const [sensorAxis, setAxis] = useState<'vertical' | 'horizontal' | null>(null);
  const [second, setSecond] = useState<SensorDraft | null>(null);
  const [counting, setCounting] = useState<'clockwise' | 'counterclockwise' | null>(null);
  const [instrumentId, setInstrument] = useState<string | null>(null);
  const [checked, setChecked] = useState(unchecked);
  const [found, setFound] = useState<readonly FoundDraft[]>([]);
  const isSensed = sensorAxis && (second === null || second.sensorAxis !== null);
  const isWhole = isSensed && counting && instrumentId && Object.values(checked).every(Boolean);
  const secondSensor = second?.sensorAxis ? { secondSensor: { ...second, sensorAxis: second.sensorAxis } } : {};
  return {
    ...{ words, setWords, sensorAxis, setAxis, counting, setCounting, instrumentId, setInstrument },
    ...{ checked, setChecked, found, setFound, second, setSecond },
    given: isWhole
      ? {
          ...{ ...words, sensorAxis, ...secondSensor, counting, instrumentId },
          ...{ ...(checked as Record<Point, true>), found: [...found] },
        }
      : undefined,
  };
}
export type Sheet = ReturnType<typeof useSheet>;
