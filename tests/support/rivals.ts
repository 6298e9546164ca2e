/** Kits that compete for parts: a stock of about six tenths of what all of them want. The same seed gives the same question. */
export function rivals({ kits, parts, density, seed }: { kits: number; parts: number; density: number; seed: number }) {
  let state = seed * 7919 + 1;
  const chance = () => {
    state = (state * 48271) % 2147483647;
    return state / 2147483647;
  };
  const asked = Array.from({ length: kits }, (_, kit) => {
    const needs: Record<string, number> = {};
    for (let part = 0; part < parts; part += 1)
      if (chance() < density) needs[`p${part}`] = 1 + Math.floor(chance() * 4);
    return { id: `k${kit}`, value: 1 + Math.floor(chance() * 1000), needs };
  });
  const stock: Record<string, number> = {};
  for (let part = 0; part < parts; part += 1) {
    const wanted = asked.reduce((sum, { needs }) => sum + (needs[`p${part}`] ?? 0), 0);
    stock[`p${part}`] = Math.floor(wanted * 0.6 * (0.6 + 0.8 * chance()));
  }
  return { kits: asked, stock };
}
