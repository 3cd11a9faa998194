/** Played days for tests of the pictures; computed by the model, never written down. */
import { DEMO_SITE, type PlayedDay, parsePlainSite, playDay } from '../../../model/index.ts';

const site = parsePlainSite(DEMO_SITE);

export const WEST: PlayedDay = playDay(site, 'west');
export const SOUTH: PlayedDay = playDay(site, 'south');

/** The step at which a clock of the place shows an hour; the demo's clock never changes. */
export const stepAt = ({ stepS }: PlayedDay, hour: number): number => Math.round((hour * 3600) / stepS);
