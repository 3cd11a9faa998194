/** The paths of the ledger: what each brings at a step, face by face and way by way. */
import { type Face, openFaces } from '../../faces.ts';
import { SIGMA } from '../../physical-constants.ts';
import { faceAreasM2 } from '../../shading/wall-frame.ts';
import { LEDGER_WORDS } from '../../siting/ledger-words.ts';
import type { BorderWay, PlayedDay } from '../../siting/played-day.ts';
import { LEDGER_PATHS, type LedgerPath } from '../../siting/results.ts';
import { covers } from '../../thermal/hood.ts';
import { kelvinOf } from './explain-air.ts';
import { type Explanation, explanation, type Given } from './explanation.ts';
import { difference, type Formula, minus, power, product, sum } from './formula.ts';
import { nodeName, nodeSymbol } from './node-names.ts';

/** Whose law each path follows. */
const SOURCES: Readonly<Partial<Record<LedgerPath, string>>> = {
  convection:
    "Newton's law of cooling; h natural (Churchill and Chu 1975 upright, McAdams 1954 level) blended with flat-plate flow (Incropera 2007, eq. 7.30, section 9.9)",
  longwaveSky:
    'Stefan-Boltzmann law, constant of CODATA 2018; X is area times emittance times view factor; low sky radiates like air: Walton 1983, NBSSIR 83-2655',
  longwaveGround:
    'Stefan-Boltzmann law, constant of CODATA 2018; grey ground of emittance 0.95 mirrors the rest from the sky',
  longwaveWall: 'Stefan-Boltzmann law, constant of CODATA 2018; grey wall, which mirrors what it does not emit',
  longwaveSurroundings: 'Stefan-Boltzmann law, constant of CODATA 2018; obstructions black and as warm as the air',
  mounting:
    'Bar-Cohen and Rohsenow 1984, eq. for isothermal plates (Incropera eq. 9.47), for the air that rises in the gap; conduction across it; grey parallel plates',
  hood: 'Bar-Cohen and Rohsenow 1984 for the air that rises behind the hood; conduction across the gap; grey parallel plates',
  vents:
    'Stack effect, ASHRAE Fundamentals, chapter on ventilation and infiltration: h is density times specific heat times volume flow',
};

/** Name of the figure that opens a path, or a path at one node. */
export const pathFigure = (path: LedgerPath, node?: string): string =>
  node === undefined ? `path:${path}` : `path:${path}:${node}`;

const PATH_LETTER = 'Q';

/** What a path brings at a step. */
export function explainPath(played: PlayedDay, path: LedgerPath, step: number): Explanation {
  if (path === 'sunBeam' || path === 'sunDiffuse' || path === 'sunReflected') return sunPath(played, path, step);
  if (path === 'dissipation') return dissipation(played, step);
  if (path === 'storage') return storage(played, step);
  const nodes = nodesOf(played, path);
  const given: Record<string, Given> = {};
  for (const node of nodes) {
    given[`Q_${nodeSymbol(node)}`] = [
      `through ${nodeName(node)}`,
      atNodeW(played, path, node, step),
      'W',
      pathFigure(path, node),
    ];
  }
  return explanation({
    what: pathFigure(path),
    title: `Heat from ${LEDGER_WORDS[path]}`,
    symbol: PATH_LETTER,
    formula: sum(...Object.keys(given)),
    given,
    value: played.ledgers[step]?.[path] ?? 0,
    unit: 'W',
    quantity: 'power',
    source: SOURCES[path] ?? '',
    note: 'Positive into the box.',
    atUtc: played.result.stepsUtc[step] as Date,
  });
}

/** The nodes of the box that a path goes through. */
export const nodesOf = ({ border }: PlayedDay, path: LedgerPath): string[] => [
  ...new Set(border.filter((way) => way.path === path && way.size !== 0).map(({ inner }) => inner)),
];

const atNodeW = (played: PlayedDay, path: LedgerPath, node: string, step: number): number =>
  waysAt(played, path, node).reduce((total, way) => total + (way.inwardW[step] as number), 0);

const waysAt = ({ border }: PlayedDay, path: LedgerPath, node: string): BorderWay[] =>
  border.filter((way) => way.path === path && way.inner === node && way.size !== 0);

/** What a path brings through one face or node: each way by its law. */
export function explainPathAt(played: PlayedDay, path: LedgerPath, node: string, step: number): Explanation {
  const given: Record<string, Given> = {};
  const inner = `T_${nodeSymbol(node)}`;
  given[inner] = [`temperature of ${nodeName(node)}`, kelvinOf(played, node, step), 'K'];
  const terms = waysAt(played, path, node).map((way, k): Formula => {
    const at = nodeSymbol(way.outer);
    const outer = `T_${at}`;
    given[outer] = [`temperature of ${nodeName(way.outer)}`, kelvinOf(played, way.outer, step), 'K'];
    if (way.kind === 'radiation') {
      const x = `X_${at}${samePlace(played, path, node, way, k)}`;
      given['σ'] = ['Stefan-Boltzmann constant', SIGMA, 'W/(m² K⁴)'];
      given[x] = [`exchange area with ${nodeName(way.outer)}: area times emittance times view factor`, way.size, 'm²'];
      return product('σ', x, difference(power(outer, 4), power(inner, 4)));
    }
    const h = `h_${at}`;
    const area = 'A';
    given[h] = ['convection coefficient', way.coefficientWm2K?.[step] ?? 0, 'W/(m² K)'];
    given[area] = [
      way.path === 'vents' ? 'unit area, because h is that of the whole flow' : `area of ${nodeName(node)}`,
      way.size,
      'm²',
    ];
    return product(h, area, difference(outer, inner));
  });
  return explanation({
    what: pathFigure(path, node),
    title: `Heat from ${LEDGER_WORDS[path]} through ${nodeName(node)}`,
    symbol: `${PATH_LETTER}_${nodeSymbol(node)}`,
    formula: sum(...terms),
    given,
    value: atNodeW(played, path, node, step),
    unit: 'W',
    quantity: 'power',
    source: SOURCES[path] ?? '',
    note: 'Positive into the box.',
    atUtc: played.result.stepsUtc[step] as Date,
    within: withinOf(played, path, node, step),
  });
}

/** Two ways to the same place have exchange areas of their own. */
function samePlace(played: PlayedDay, path: LedgerPath, node: string, way: BorderWay, k: number): string {
  const earlier = waysAt(played, path, node).slice(0, k);
  const count = earlier.filter((one) => one.outer === way.outer && one.kind === way.kind).length;
  return count === 0 ? '' : `,${count + 1}`;
}

/** Temperatures shown to a hundredth of a kelvin move a flow by that times its conductance. */
function withinOf(played: PlayedDay, path: LedgerPath, node: string, step: number): number {
  const conductance = waysAt(played, path, node).reduce((total, way) => {
    if (way.kind !== 'radiation') return total + way.size * (way.coefficientWm2K?.[step] ?? 1);
    return total + 4 * SIGMA * way.size * kelvinOf(played, node, step) ** 3;
  }, 0);
  return 0.02 * conductance + 1e-3 * Math.abs(atNodeW(played, path, node, step)) + 1e-3;
}

const SUN_PARTS = {
  sunBeam: ['beamWm2', 'b', 'beam and glow round the sun'],
  sunDiffuse: ['diffuseWm2', 'd', 'light of dome and horizon'],
  sunReflected: ['reflectedWm2', 'r', 'light off ground and wall'],
} as const;

function sunPath(played: PlayedDay, path: keyof typeof SUN_PARTS, step: number): Explanation {
  const { box } = played.site;
  const areas = faceAreasM2(box);
  const [key, letter, words] = SUN_PARTS[path];
  const bare = openFaces(box.mount).filter((face) => !covers(box.hood, face));
  const given: Record<string, Given> = { α: ['solar absorptance of the finish', box.solarAbsorptance, ''] };
  const terms = bare.map((face) => {
    given[`A_${face}`] = [`area of ${nodeName(face)}`, areas[face], 'm²'];
    given[`G_${letter},${face}`] = [
      `${words} on ${nodeName(face)}`,
      played[key][face][step] as number,
      'W/m²',
      path === 'sunBeam' ? `beam:${face}` : undefined,
    ];
    return product(`A_${face}`, `G_${letter},${face}`);
  });
  return explanation({
    what: pathFigure(path),
    title: `Heat from ${LEDGER_WORDS[path]}`,
    symbol: PATH_LETTER,
    formula: product('α', sum(...terms)),
    given,
    value: played.ledgers[step]?.[path] ?? 0,
    unit: 'W',
    quantity: 'power',
    source: 'Perez et al. 1990 for the parts of the sky; shade and view factors by rays through the surroundings',
    note: covers(box.hood, 'front') ? 'Faces that the hood covers take in no sun; the hood does in their stead.' : '',
    atUtc: played.result.stepsUtc[step] as Date,
  });
}

function dissipation(played: PlayedDay, step: number): Explanation {
  const { powerW, battery } = played.site.box;
  return explanation({
    what: pathFigure('dissipation'),
    title: `Heat from ${LEDGER_WORDS.dissipation}`,
    symbol: 'P',
    formula: sum(product('s', 'P_in'), 'P_bat'),
    given: {
      s: ['share of the power at this hour of the clock', played.dutyShares[step] as number, ''],
      P_in: ['heat given off inside, as entered', powerW, 'W'],
      P_bat: ['heat given off by the battery', battery?.powerW ?? 0, 'W'],
    },
    value: played.ledgers[step]?.dissipation ?? 0,
    unit: 'W',
    quantity: 'power',
    source: 'As entered; all electric power that goes in becomes heat (first law)',
    atUtc: played.result.stepsUtc[step] as Date,
  });
}

function storage(played: PlayedDay, step: number): Explanation {
  const ledger = played.ledgers[step];
  const given: Record<string, Given> = {};
  LEDGER_PATHS.filter((path) => path !== 'storage' && ledger?.[path] !== 0).forEach((path, k) => {
    given[`Q_${k + 1}`] = [LEDGER_WORDS[path], ledger?.[path] ?? 0, 'W', pathFigure(path)];
  });
  return explanation({
    what: pathFigure('storage'),
    title: 'Heat from the warmth stored in the box',
    symbol: 'S',
    formula: minus(sum(...Object.keys(given))),
    given,
    value: ledger?.storage ?? 0,
    unit: 'W',
    quantity: 'power',
    source:
      'First law: what comes in, goes out and is stored sums to zero. The model takes storage from capacity times rise in temperature (backward difference of second order, Hairer and Wanner 1996, section V.1); that both agree is the check',
    note: 'Positive where the box cools and its warmth comes back; negative where it warms up.',
    atUtc: played.result.stepsUtc[step] as Date,
    within: 0.05,
  });
}

/** Sun taken in by a face, or by the sheet of the hood before it. */
export function explainAbsorbed(played: PlayedDay, face: Face, step: number): Explanation {
  const { box } = played.site;
  const hooded = box.hood !== null && covers(box.hood, face);
  const place = hooded ? `the hood before ${nodeName(face)}` : nodeName(face);
  const value = (hooded ? played.hoodAbsorbedW : played.absorbedW)[face][step] as number;
  return explanation({
    what: `absorbed:${face}`,
    title: `Sun taken in by ${place}`,
    symbol: `Q_${face}`,
    formula: product('α', 'A', sum('G_b', 'G_d', 'G_r')),
    given: {
      α: [
        hooded ? 'solar absorptance of the hood' : 'solar absorptance of the finish',
        hooded ? (box.hood?.solarAbsorptance ?? 0) : box.solarAbsorptance,
        '',
      ],
      A: [`area of ${nodeName(face)}`, faceAreasM2(box)[face], 'm²'],
      G_b: ['beam and glow round the sun', played.beamWm2[face][step] as number, 'W/m²', `beam:${face}`],
      G_d: ['light of dome and horizon', played.diffuseWm2[face][step] as number, 'W/m²'],
      G_r: ['light off ground and wall', played.reflectedWm2[face][step] as number, 'W/m²'],
    },
    value,
    unit: 'W',
    quantity: 'power',
    source: 'Perez et al. 1990 for the parts of the sky; shade and view factors by rays through the surroundings',
    atUtc: played.result.stepsUtc[step] as Date,
  });
}
