import type { SheetDrawn } from '@hubwright/contracts/work-orders/sheet-drawn';
import { BladeAngles } from '../../../ui/pictures/BladeAngles.tsx';
import { HeatPicture } from '../../../ui/pictures/HeatPicture.tsx';
import { drawnOf } from './angles-asked.ts';

/** A signed sheet as a picture, drawn from what was signed. */
export function SheetPicture({ drawn }: { drawn: SheetDrawn }) {
  if (drawn.kind === 'heat')
    return <HeatPicture title="The oven’s chart as signed" asked={drawn.asked} points={drawn.points} />;
  const { blades, readings } = drawn;
  return <BladeAngles title="Blade angles as signed" blades={blades} stops={drawnOf(readings, drawn)} />;
}
