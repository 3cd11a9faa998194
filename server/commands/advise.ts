import { rankWalls, type Site, usualUnits } from '../../model/index.ts';
import { type Advice, type AdviceOptions, adviseOn, SAMPLES, SEEDS } from '../advice.ts';
import { type Command, printText, readArgs, readUnits, readWhole } from '../command.ts';
import { adviceText } from '../report/advice-text.ts';
import { readRules, readSite, tellingFile, tellingFileLater } from '../site-file.ts';
import { progressOn } from '../terminal/progress.ts';

/** `shadeside advise`: what follows the ranking for one wall. */
export const advise: Command = {
  summary: 'says for one wall what would help and how sure the forecast is',
  help: `shadeside advise [SITE.json] [--wall NAME] [--json] [--units metric|us]
                 [--rules FILE] [--samples N] [--seed N]

Says for one wall what would help and how much, how sure the forecast is when
its inputs are guesses, how cold the box gets in the coldest night, and whether
its outside burns.

  SITE.json   the site; "-" reads it from standard input. Left out, the
              built-in example is used.
  --wall      the name of the wall in the site; the one that the ranking puts
              first when left out
  --json      the same as JSON: degC, K, instants in UTC
  --units     units of the text, metric or us; the usual ones of the place
              when left out
  --rules     thresholds of the siting checks, as for rank
  --samples   how many sets of inputs are tried, ${SAMPLES.least} to ${SAMPLES.most}; ${SAMPLES.usual} when left
              out. Ten times as many take ten times as long.
  --seed      which sets are tried, a whole number from ${SEEDS.least} to ${SEEDS.most}; ${SEEDS.usual}
              when left out. The same seed tries the same sets.`,
  run: async (args) => {
    const { values, positionals } = readArgs(
      'advise',
      args,
      {
        wall: { type: 'string' },
        json: { type: 'boolean' },
        units: { type: 'string' },
        rules: { type: 'string' },
        samples: { type: 'string' },
        seed: { type: 'string' },
      },
      1,
    );
    const chosenUnits = readUnits('advise', values.units);
    const samples = readWhole('advise', 'samples', values.samples, SAMPLES);
    const seed = readWhole('advise', 'seed', values.seed, SEEDS);
    const rules = await readRules(values.rules);
    const { name, site } = await readSite(positionals[0]);
    const units = chosenUnits ?? usualUnits(site.place.timeZone);
    const ranking = tellingFile(name, () => rankWalls(site, { units, ...rules }));
    const wall = values.wall ?? ranking.walls[0]?.name ?? '';
    const advice = await tellingFileLater(name, () =>
      adviseWithProgress(site, wall, { units, samples, seed, ...rules }),
    );
    if (values.json) process.stdout.write(`${JSON.stringify(advice, null, 2)}\n`);
    else printText(adviceText(site, { advice, ranking, units }));
    return 0;
  },
};

async function adviseWithProgress(site: Site, wall: string, options: AdviceOptions): Promise<Advice> {
  const progress = progressOn(process.stderr, 'Trying what the inputs may be');
  try {
    return await adviseOn(site, wall, { ...options, onShare: progress.tell });
  } finally {
    progress.end();
  }
}
