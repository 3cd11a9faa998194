/** `npm start`: shows the ranking of the built-in site at once, then serves the page. */
import { DEMO_SITE, parseSite, rankedDays, usualUnits } from '../model/index.ts';
import { withPlainErrors } from './cli.ts';
import { printText, type Surroundings } from './command.ts';
import { serveUntilStopped } from './commands/serve.ts';
import { afterwords } from './report/afterwords.ts';
import { rankingText } from './report/ranking-text.ts';
import { DEFAULT_PORT, readServerSettings } from './settings.ts';

/** How many ports are tried from the usual one on; a port that was asked for is the only one tried. */
const TRIES = 10;

/** Ranks, serves until stopped, and gives back the exit code. */
export function start(args: string[], surroundings: Surroundings): Promise<number> {
  return withPlainErrors(async () => {
    const settings = readServerSettings('start', args, process.env);
    const { port } = settings;
    const site = parseSite(DEMO_SITE);
    const units = usualUnits(site.place.timeZone);
    const ranked = rankedDays(site, { units });
    printText(`${rankingText(site, ranked, { units, more: afterwords(site, ranked.ranking, { units }) })}\n`);
    const ports = port === undefined ? Array.from({ length: TRIES }, (_, index) => DEFAULT_PORT + index) : [port];
    return serveUntilStopped(settings, ports, surroundings);
  });
}
