import type { SheetDrawn } from '@hubwright/contracts/work-orders/sheet-drawn';
import { BladeAngles } from '../../../ui/pictures/BladeAngles.tsx';
import { drawnOf } from './angles-asked.ts';

/** A signed sheet as a picture, drawn from what was signed. */
export function SheetPicture({ drawn }: { drawn: SheetDrawn }) {
  const { blades, readings } = drawn;
  return <BladeAngles title="Blade angles as signed" blades={blades} stops={drawnOf(readings, drawn)} />;
}
