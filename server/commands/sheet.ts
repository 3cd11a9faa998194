import { usualUnits } from '../../model/index.ts';
import { writeWhole } from '../atomic-file.ts';
import { BadInput } from '../bad-input.ts';
import { type Command, readArgs, readUnits, seeHelp } from '../command.ts';
import { LINK_BASE_ALLOWED, readLinkBase } from '../sheet/link-base.ts';
import { PAPER_NAMES, type Paper } from '../sheet/paper.ts';
import { readRules, readSite, tellingFileLater } from '../site-file.ts';

const OPTIONS = {
  out: { type: 'string' },
  units: { type: 'string' },
  paper: { type: 'string' },
  wall: { type: 'string' },
  rules: { type: 'string' },
  'link-base': { type: 'string' },
} as const;

/** `shadeside sheet`: one page to take to the wall and to sign. */
export const sheet: Command = {
  summary: 'makes the site sheet, one page of PDF to take to the wall and sign',
  help: `shadeside sheet [SITE.json] --out FILE.pdf [--wall NAME] [--units metric|us]
                [--paper a4|letter] [--link-base URL] [--rules FILE]

Makes one page for the installer: the decision and its margin, the walls, the
design day, sun diagram, plan, siting checks, cautions, what the forecast rests
on, and room for readings and a signature.

  SITE.json    the site; "-" reads it from standard input. Left out, the
               built-in example is used.
  --out        the file to write; "-" is standard output
  --wall       the wall that the sheet is about; the one that the ranking puts
               first when left out
  --units      metric or us; the usual ones of the place when left out
  --paper      a4 or letter; letter with us units, a4 otherwise, when left out
  --link-base  address of the page, such as https://host/: the sheet then has a
               code that opens the site there
  --rules      thresholds of the siting checks, as for rank`,
  run: async (args) => {
    const { values, positionals } = readArgs('sheet', args, OPTIONS, 1);
    const asked = { units: readUnits('sheet', values.units), paper: readPaper(values.paper) };
    const linkBase = readBase(values['link-base']);
    const { out, wall } = values;
    if (out === undefined || out === '')
      throw new BadInput([`sheet: --out is needed: a file, or "-" for standard output; ${seeHelp('sheet')}`]);
    const rules = await readRules(values.rules);
    const { name, site, input } = await readSite(positionals[0]);
    // Only now: the code that writes PDF takes its time to load.
    const { makeSheet } = await import('../sheet/make-sheet.ts');
    const units = asked.units ?? usualUnits(site.place.timeZone);
    const options = {
      ...rules,
      units,
      paper: asked.paper,
      linkBase,
      madeAt: new Date(),
      ...(wall !== undefined && { wall }),
    };
    const pdf = await tellingFileLater(name, () => makeSheet(input, options));
    if (out === '-') await new Promise<void>((resolve) => process.stdout.write(pdf, () => resolve()));
    else await writeWhole(out, pdf);
    return 0;
  },
};

function readPaper(text: string | undefined): Paper | undefined {
  const paper = PAPER_NAMES.find((name) => name === text);
  if (text === undefined || paper !== undefined) return paper;
  throw new BadInput([`sheet: --paper ${text}: allowed are ${PAPER_NAMES.join(' and ')}`]);
}

function readBase(text: string | undefined): string | undefined {
  if (text === undefined) return undefined;
  const base = readLinkBase(text);
  if (base === null) throw new BadInput([`sheet: --link-base ${text}: allowed is ${LINK_BASE_ALLOWED}`]);
  return base;
}
