/**
 * What the API lets others reckon: each task takes what its request holds and gives back what is sent, as text of JSON or as bytes.
 * Made into text where it is reckoned, an answer crosses threads as one piece, and nobody else waits while it is made.
 */
import { evaluateDay, parseSite, parseSitingRules, rankWalls, shadeMemory } from '../../model/index.ts';
import { adviseOn } from '../advice.ts';
import type { AdviceInput, DayInput, RankInput, SheetInput } from '../requests.ts';

export type Answer = string | Uint8Array;

/** Asked in the middle of long work whether anybody still waits for it. */
export type Stopped = () => boolean;

export interface TaskInputs {
  readonly rank: RankInput;
  readonly day: DayInput;
  readonly advice: AdviceInput;
  readonly sheet: SheetInput;
}

export type TaskName = keyof TaskInputs;

type Tasks = {
  readonly [Name in TaskName]: (input: TaskInputs[Name], stopped: Stopped) => Answer | Promise<Answer>;
};

/**
 * Of this thread. Finding out what a box sees of sky and ground takes longer than its day; who asks again mostly changed something
 * else, and the next site often has the same box.
 */
const shades = shadeMemory();

/** A new task is one more entry here and in `TaskInputs`. Each throws SiteError for a site that is not right. */
export const TASKS: Tasks = {
  rank: ({ site, units, rules }) =>
    JSON.stringify(rankWalls(parseSite(site), { ...(units && { units }), ...givenRules(rules), shades })),

  day: ({ site, wall }) => JSON.stringify(evaluateDay(parseSite(site), wall, { shades })),

  advice: async ({ site: input, wall, rules, ...options }, stopped) => {
    const site = parseSite(input);
    const own = givenRules(rules);
    // Without a wall it is the one that the ranking puts first.
    const name = wall ?? rankWalls(site, { ...own, shades }).walls[0]?.name ?? '';
    return JSON.stringify(await adviseOn(site, name, { ...options, ...own, stopped }));
  },

  sheet: async ({ site, rules, wall, units, ...asked }) => {
    // The code that writes PDF loads when somebody first asks for one.
    const { makeSheet } = await import('../sheet/make-sheet.ts');
    const options = { ...(units && { units }), ...(wall !== undefined && { wall }), ...givenRules(rules) };
    return makeSheet(site, { ...asked, ...options, madeAt: new Date() });
  },
};

/** The rules that a body brings along, or none. */
const givenRules = (rules: unknown) => (rules === undefined ? {} : { rules: parseSitingRules(rules) });
