/** The hatching that means "on order", as a pattern to fill with. `scale` undoes the scale of the group it is used in. */
export function Hatch({ id, scale }: { id: string; scale: number }) {
  const width = 8 * scale;
  return (
    <pattern id={id} width={width} height={width} patternUnits="userSpaceOnUse" patternTransform="rotate(45)">
      <rect className="hatch" width={width / 2} height={width} />
    </pattern>
  );
}
