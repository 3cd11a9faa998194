/** One square metre in the sun, settled by the network that the product computes with. */
import { KELVIN } from '../../model/physical-constants.ts';
import { createNetwork, type Link } from '../../model/thermal/network.ts';

export interface Plate {
  /** Absorbed sun, W/m2. */
  readonly absorbedWm2: number;
  readonly emittance: number;
  /** Temperature that the plate radiates to, degC. */
  readonly radiantC: number;
  /** Convection coefficient, W/(m2 K), and air, degC. */
  readonly h?: number;
  readonly airC?: number;
}

/** Steady temperature, degC. */
export function plateC({ absorbedWm2, emittance, radiantC, h = 0, airC = radiantC }: Plate): number {
  const links: Link[] = [
    { kind: 'radiation', from: 'plate', to: 'surroundings', exchangeAreaM2: emittance },
    { kind: 'convection', from: 'plate', to: 'air', areaM2: 1, coefficient: () => h },
  ];
  const network = createNetwork({ capacitiesJK: { plate: 1 }, boundaries: ['surroundings', 'air'], links });
  const t = Float64Array.of(300, radiantC + KELVIN, airC + KELVIN);
  network.settle(t, Float64Array.of(absorbedWm2), 0);
  return (t[0] as number) - KELVIN;
}
