/** What a marched day is judged by, for whoever needs no more of it: a full result takes as long again as half the march. */
import { KELVIN } from '../physical-constants.ts';
import type { Site, Wall } from '../site.ts';
import type { SiteDay } from './design-day.ts';
import { type MarchedWall, marchWall } from './march-wall.ts';
import type { JudgedDay } from './results.ts';

/** The figures, with the curves that they come from, degC, one number a step. */
export interface JudgedCurves extends JudgedDay {
  readonly insideAirC: Float64Array;
  /** Of what the limits refer to. */
  readonly limitedC: Float64Array;
  /** The highest of those. */
  readonly peakLimitedC: number;
}

/** Judges a wall on a day that was worked out before; its figures are those of `evaluateWall`, to the last digit. */
export function judgeWall(site: Site, wall: Wall, day: SiteDay): JudgedCurves {
  return judgedDay(site, day, marchWall(site, wall, day));
}

/** Judges a marched day. */
export function judgedDay(site: Site, day: SiteDay, { network, march }: MarchedWall): JudgedCurves {
  const { values, width } = march.temperaturesK;
  const column = (node: string): Float64Array => {
    const index = network.indexOf(node);
    return Float64Array.from(day.steps, (_, k) => (values[k * width + index] as number) - KELVIN);
  };
  const insideAirC = column('insideAir');
  const limitedC = {
    insideAir: () => insideAirC,
    outsideAir: () => Float64Array.from(day.steps, ({ weather }) => weather.airC),
    componentCase: () => column('electronics'),
  }[site.limits.refersTo]();
  const peakLimitedC = Math.max(...limitedC);
  return {
    marginK: site.limits.maxC - peakLimitedC,
    coldMarginK: Math.min(...limitedC) - site.limits.minC,
    peakInsideAirC: Math.max(...insideAirC),
    insideAirC,
    limitedC,
    peakLimitedC,
  };
}
