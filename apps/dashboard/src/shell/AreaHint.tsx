import { FirstHint } from '../ui/FirstHint.tsx';
import type { AreaId } from '../views/registry.ts';

/** What each part of the shop is for, said to whoever stands in it for the first time. The parts room names real kits instead. */
const hints: Partial<Record<AreaId, readonly string[]>> = {
  'front-desk': [
    'At the left stands whom we owe an answer, the longest wait first: press one, and the unit opens with what to send next.',
    'When someone calls, type their name, a serial or a work order at the right: the answer stands in the list already.',
    'What came in and was not looked at stands in the strip on top; “Book a unit in” begins a new one.',
  ],
  'build-bench': [
    '“Mine to sign” holds every step whose turn it is and that you are authorised for; “Blocked” says what each waits for.',
    'Scan a traveler, a work order or a serial anywhere on the page: it opens.',
    'A unit in build shows the propeller from the front: positions fill as you scan what you install.',
  ],
  inspection: [
    'The queue at the left has what waits for your stamp; the sheet in the middle has the values beside their limits.',
    'At the right stands by name what keeps the unit from leaving.',
    'What you did yourself waits for another inspector, unless the shop profile says otherwise.',
  ],
  manager: [
    'The sentence on top says how many promises hold and who has the units in hand.',
    'Press a count to see only those units; press a unit to see why it stands.',
    'Gauges and authorisations that end soon stand at the bottom.',
  ],
};

export function AreaHint({ area }: { area: AreaId }) {
  const lines = hints[area];
  if (!lines) return null;
  return (
    <FirstHint key={area} id={area} title="New here? How to read this page">
      <ol>
        {lines.map((line) => (
          <li key={line}>{line}</li>
        ))}
      </ol>
    </FirstHint>
  );
}
