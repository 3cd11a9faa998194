/** Reads a year of weather and marches the walls through it, beside the page. Holds no physics: it calls the model. */
import { evaluateYear, readWeather, type Site, SiteError, syntheticYear, type WeatherYear } from '../../model/index.ts';
import type { WeatherChoice, YearReply, YearRequest } from './year.ts';

/** A year of hours as text is a twentieth of this; more is something else, and not worth the memory of a phone. */
const MAX_FILE_BYTES = 40_000_000;

self.addEventListener('message', ({ data }: MessageEvent<YearRequest>) => void answer(data));

async function answer(request: YearRequest) {
  try {
    const weather = await weatherOf(request.weather, request.site);
    const { at: _at, length: _length, windHeightM: _height, ...told } = weather;
    say({ kind: 'weather', weather: told });
    if (request.kind === 'reckon') reckon(request.site, weather);
  } catch (error) {
    const message = error instanceof Error ? error.message : String(error);
    // What is wrong with the weather has its words; a file that cannot be read any more has the browser's.
    const refused = error instanceof SiteError || error instanceof DOMException;
    say({ kind: refused ? 'refused' : 'failed', message });
  }
}

async function weatherOf(choice: WeatherChoice, site: Site): Promise<WeatherYear> {
  if (choice.kind === 'invented') return syntheticYear(site, { seed: choice.seed });
  const { file } = choice;
  if (file.size > MAX_FILE_BYTES) {
    throw new DOMException(`it is larger than ${MAX_FILE_BYTES / 1e6} MB, too large for a year of hours`);
  }
  return readWeather(await file.text());
}

function reckon(site: Site, weather: WeatherYear) {
  const { walls } = site;
  const years = walls.map(({ name }, done) => {
    say({ kind: 'progress', done, of: walls.length });
    return evaluateYear(site, name, weather);
  });
  say({ kind: 'years', years });
}

function say(reply: YearReply) {
  self.postMessage(reply);
}
