/** Computes the page's results beside the page, so that typing stays smooth. Holds no physics: it calls the model. */
import {
  cautionsAt,
  parsePlainSite,
  type RankedDays,
  rankedDays,
  type Site,
  SiteError,
  shadeMemory,
  type UnitSystem,
} from '../../model/index.ts';
import type { ComputeReply, ComputeRequest, SiteResult } from './protocol.ts';
import { readSite } from './read-site.ts';

/** The last ranking, kept because choosing another wall's day asks for the same one again. */
let last: { key: string; ranked: RankedDays } | undefined;

/** Most edits move nothing that shades. */
const shades = shadeMemory();

self.addEventListener('message', async (event: MessageEvent<ComputeRequest>) => {
  self.postMessage(await reply(event.data));
});

async function reply({ id, input, units, wall }: ComputeRequest): Promise<ComputeReply> {
  try {
    return { id, kind: 'result', result: compute(await readSite(input), units, wall) };
  } catch (error) {
    if (error instanceof SiteError) return { id, kind: 'problems', problems: error.problems };
    return { id, kind: 'failed', message: error instanceof Error ? error.message : String(error) };
  }
}

function compute(site: Site, units: UnitSystem, wall: string | null): SiteResult {
  const { ranking, days, onDay } = rank(site, units);
  const day = days.get(wall ?? '') ?? days.get(ranking.walls[0]?.name ?? '');
  if (day === undefined) throw new Error('the site has no wall');
  return {
    site,
    zoneOfCoordinates: zoneOfCoordinates(site),
    ranking,
    day,
    cautions: cautionsAt(site, day, units, onDay),
  };
}

function rank(site: Site, units: UnitSystem): RankedDays {
  const key = JSON.stringify([site, units]);
  if (last?.key !== key) last = { key, ranked: rankedDays(site, { units, shades }) };
  return last.ranked;
}

/** The zone that belongs to the last coordinates. */
let lastZone: { key: string; zone: string } | undefined;

function zoneOfCoordinates(site: Site): string {
  const { timeZone, ...place } = site.place;
  if (site.assumed.includes('place.timeZone')) return timeZone;
  const key = JSON.stringify(place);
  if (lastZone?.key !== key) lastZone = { key, zone: parsePlainSite({ ...site, place }).place.timeZone };
  return lastZone.zone;
}
