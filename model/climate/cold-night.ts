/** The coldest night that a site is judged by. */
import type { Site } from '../site.ts';
import { pressureAtAltitude } from '../solar/atmosphere.ts';
import { designClimate, monthOfSample } from './design-climate.ts';
import { CLIMATE_SAMPLES } from './samples.ts';
import { skyLongwave } from './sky-temperature.ts';

export interface ColdNight {
  readonly airC: number;
  readonly dewPointC: number;
  readonly windMs: number;
  readonly skyLongwaveWm2: number;
  /** What night this is, in a sentence, and where it comes from. */
  readonly text: string;
  readonly origin: string;
}

/** The entered night; else the clear night of a sample's coldest month; else the coldest hour of the design day itself. */
export function coldNightOf(site: Site): ColdNight {
  const { climate, place } = site;
  const pressurePa = pressureAtAltitude(place.altitudeM);
  const { airC, dewPointC, windMs, cloudFraction, text, origin } = chosen(site);
  // Air is never moister than saturated.
  const dew = Math.min(dewPointC, airC);
  const skyLongwaveWm2 = skyLongwave({ airC, dewPointC: dew, cloudFraction, pressurePa });
  return { airC, dewPointC: dew, windMs, skyLongwaveWm2, text, origin: climate.coldNight ? 'entered' : origin };
}

function chosen(site: Site) {
  const { climate, place } = site;
  if (climate.coldNight !== undefined) {
    const { minC, dewPointC, windMs, cloudFraction } = climate.coldNight;
    const text = dewPointC === undefined ? 'Cold night as entered, its air saturated' : 'Cold night as entered';
    return { airC: minC, dewPointC: dewPointC ?? minC, windMs, cloudFraction, text, origin: '' };
  }
  const sample = CLIMATE_SAMPLES.find(({ name }) => name === climate.sample);
  if (sample !== undefined) {
    const months = Array.from({ length: 12 }, (_, k) => monthOfSample(sample, k + 1, place.latitudeDeg));
    const minC = (month: (typeof months)[number]) => month.maxC - month.dailyRangeK;
    const coldest = months.reduce((best, month) => (minC(month) < minC(best) ? month : best));
    const { dewPointC, windMs } = coldest;
    const text = `${sample.title}: clear night of its coldest month`;
    return { airC: minC(coldest), dewPointC, windMs, cloudFraction: 0, text, origin: sample.origin };
  }
  const lowest = designClimate(site).lowest;
  return {
    ...lowest,
    cloudFraction: 0,
    text: 'No cold night is entered: the coldest hour of the design day',
    origin: 'model',
  };
}
