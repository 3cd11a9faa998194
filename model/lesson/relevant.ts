/** Which statements belong to a question: of all that hold, those that answer its why, in the order in which they do. */
import type { QuestionKind } from './question.ts';
import type { Statement } from './rule.ts';

/** More than this nobody reads off a wall. */
const MOST = 4;

const WHEN = ['afternoon-sun-meets-hot-air', 'peak-before-the-air', 'morning-sun-meets-cool-air'];
const WALLS = [
  'hottest-in-the-afternoon',
  'coolest-takes-less-sun',
  'coolest-takes-more-sun',
  'high-sun-passes-over-the-equator-side',
  'walls-alike',
];
const HOUR = ['sun-meets-it-most-squarely', 'no-beam-at-that-hour'];
const LIGHT = ['poleward-wall-gets-sun', 'front-without-direct-sun'];
const LIMIT = ['over-the-limit', 'within-the-limit'];
const OWN_HEAT = ['sun-outweighs-own-heat', 'own-heat-outweighs-sun', 'warm-without-sun'];
const CHANGE = [
  'next-to-no-difference',
  'light-finish-radiates-as-well',
  'bare-metal-keeps-its-heat',
  'paint-radiates-and-takes-in-more',
  'hood-takes-the-sun',
  'hood-gains-little',
  'eave-shades-the-high-sun',
  'low-sun-gets-under-the-eave',
  'less-sun-cooler',
  'what-hangs-above-hides-the-sky',
  'sun-with-the-hot-air',
  'more-power-hotter',
  'twice-the-power-is-less-than-twice-the-kelvins',
  'wind-cools',
  'wind-cannot-cool-below-the-air',
  'thin-air-cools-worse',
  'more-sun-up-there',
  'air-makes-the-difference',
  'sky-and-wind-make-the-difference',
  'dry-sky-is-colder',
];
const AGEING = ['battery-lives-longer-cooler'];

/** Rules by question, the first to the point first. */
export const IN_ORDER: Readonly<Record<QuestionKind, readonly string[]>> = {
  hottestWall: ['afternoon-sun-meets-hot-air', ...WALLS, ...WHEN, ...OWN_HEAT],
  coolestWall: ['coolest-takes-less-sun', ...LIGHT, ...WALLS, ...OWN_HEAT],
  peakHour: [...WHEN, ...OWN_HEAT],
  kelvinsSaved: CHANGE,
  kelvinsAdded: CHANGE,
  overLimit: [...LIMIT, ...CHANGE, ...OWN_HEAT],
  hoursOverLimit: [...LIMIT, ...CHANGE, ...WHEN, ...OWN_HEAT],
  betterRemedy: CHANGE,
  sunniestFace: [...HOUR, 'lid-in-the-high-sun', ...LIGHT, ...WHEN],
  sunniestWall: [...HOUR, 'high-sun-passes-over-the-equator-side', ...WALLS],
  sunOnWall: [...LIGHT, ...WHEN],
  dailySwing: ['skin-colder-than-air', 'warm-without-sun', 'afternoon-sun-meets-hot-air', ...OWN_HEAT],
  hotterBox: CHANGE,
  greaterSwing: ['air-swings-box-swings', 'dry-sky-is-colder', 'box-stays-above-the-air'],
  batteryYears: [...AGEING, 'warm-without-sun', ...LIMIT, 'box-stays-above-the-air'],
  ageingFactor: [...AGEING, ...CHANGE],
};

/** The statements that belong to a question; where none does, the first ones that hold. */
export function relevantTo(kind: QuestionKind, statements: readonly Statement[]): Statement[] {
  const wanted = [...new Set(IN_ORDER[kind])].flatMap((id) => statements.find((one) => one.id === id) ?? []);
  return (wanted.length > 0 ? wanted : [...statements]).slice(0, MOST);
}
