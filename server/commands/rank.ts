import { rankedDays, usualUnits } from '../../model/index.ts';
import { type Command, printText, readArgs, readUnits } from '../command.ts';
import { afterwords } from '../report/afterwords.ts';
import { rankingText } from '../report/ranking-text.ts';
import { readRules, readSite, tellingFile } from '../site-file.ts';

const OPTIONS = { json: { type: 'boolean' }, units: { type: 'string' }, rules: { type: 'string' } } as const;

/** `shadeside rank`: the walls of a site, best first. */
export const rank: Command = {
  summary: 'ranks the walls of one site on its design day',
  help: `shadeside rank [SITE.json] [--json] [--units metric|us] [--rules FILE]

Ranks the walls of a site on its design day: the wall to use first, with the
highest temperature inside the box, the margin to the limit and the checks.

  SITE.json   the site; "-" reads it from standard input. Left out, the
              built-in example is used.
  --json      the ranking as JSON: degC, W, instants in UTC
  --units     units of the text, metric or us; the usual ones of the place
              when left out
  --rules     thresholds of the siting checks; model/siting/siting-rules.json,
              which stands in when left out, is the pattern`,
  run: async (args) => {
    const { values, positionals } = readArgs('rank', args, OPTIONS, 1);
    const chosenUnits = readUnits('rank', values.units);
    const rules = await readRules(values.rules);
    const { name, site } = await readSite(positionals[0]);
    const units = chosenUnits ?? usualUnits(site.place.timeZone);
    const ranked = tellingFile(name, () => rankedDays(site, { units, ...rules }));
    if (values.json) process.stdout.write(`${JSON.stringify(ranked.ranking, null, 2)}\n`);
    else printText(rankingText(site, ranked, { units, more: afterwords(site, ranked.ranking, { units, ...rules }) }));
    return 0;
  },
};
