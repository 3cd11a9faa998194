/** The checks, topic by topic, in the order of the page. */
import type { Check, Topic } from '../check.ts';
import { BOXES_IN_THE_SUN } from './boxes-in-the-sun.ts';
import { CLEAR_SKY } from './clear-sky.ts';
import { COEFFICIENTS } from './coefficients.ts';
import { CONVECTION } from './convection.ts';
import { FINISHES } from './finishes.ts';
import { LONGWAVE_SKY } from './longwave-sky.ts';
import { MOUNTING } from './mounting.ts';
import { CYCLES } from './standard-cycles.ts';
import { SUN } from './sun.ts';
import { SURFACE_BALANCE } from './surface-balance.ts';

export const TOPICS: readonly Topic[] = [
  SUN,
  CLEAR_SKY,
  CONVECTION,
  COEFFICIENTS,
  LONGWAVE_SKY,
  SURFACE_BALANCE,
  FINISHES,
  MOUNTING,
  BOXES_IN_THE_SUN,
  CYCLES,
];

export const CHECKS: readonly Check[] = TOPICS.flatMap((topic) => topic.checks);
