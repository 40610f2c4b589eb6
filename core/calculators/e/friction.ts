/** Darcy friction factors in a round pipe. Colebrook (1939) and Haaland (1983), as in the open-source `fluids` library. */

/** Flow is laminar up to this Reynolds number, and turbulent from the next; between them nobody knows. */
const laminarUpTo = 2000;
const turbulentFrom = 4000;

type Regime = 'at rest' | 'laminar' | 'transitional' | 'turbulent';

/**
 * Friction factor of turbulent flow: 1/√f = -2 · log10(roughness/3.7 + 2.51/(Re · √f)), solved to 1e-13 of 1/√f.
 * @param reynolds above 2000; smaller ones have no turbulent solution worth having.
 * @param relativeRoughness roughness over diameter, from 0 to below 1.
 */
export function frictionColebrook(reynolds: number, relativeRoughness: number): number {
  // Each round shrinks the error at least threefold above Re 2000, so that it ends within the limit.
  let inverseRoot = 1 / Math.sqrt(frictionHaaland(reynolds, relativeRoughness));
  for (let round = 0; round < 60; round += 1) {
    const next = -2 * Math.log10(relativeRoughness / 3.7 + (2.51 * inverseRoot) / reynolds);
    const moved = Math.abs(next - inverseRoot);
    inverseRoot = next;
    if (moved <= 1e-13 * inverseRoot) break;
  }
  return 1 / inverseRoot ** 2;
}

/** Haaland's explicit form of Colebrook's equation, within 2 % of it. */
export function frictionHaaland(reynolds: number, relativeRoughness: number): number {
  return 1 / (-1.8 * Math.log10((relativeRoughness / 3.7) ** 1.11 + 6.9 / reynolds)) ** 2;
}

/** The regime, and the friction factor where something flows: the larger of both laws in the transition. */
export function pipeFriction(
  reynolds: number,
  relativeRoughness: number,
): { readonly regime: Regime; readonly factor?: number } {
  if (reynolds === 0) return { regime: 'at rest' };
  const laminar = 64 / reynolds;
  if (reynolds <= laminarUpTo) return { regime: 'laminar', factor: laminar };
  const turbulent = frictionColebrook(reynolds, relativeRoughness);
  if (reynolds >= turbulentFrom) return { regime: 'turbulent', factor: turbulent };
  return { regime: 'transitional', factor: Math.max(laminar, turbulent) };
}
