/** What a newcomer is shown in five minutes, in the order of the work: each step is a part of the page and what it is for. */

export interface TourStep {
  readonly title: string;
  readonly text: string;
  /** The view that it is in, by its address after the hash. */
  readonly hash: '#/site' | '#/area' | '#/lesson';
  /** What is marked, as a selector. */
  readonly target: string;
}

export const TOUR_STEPS: readonly [TourStep, ...TourStep[]] = [
  {
    title: 'The verdict',
    text: 'Which wall, how hot the box gets there on its design day, and how much room is left to its limit. It follows every edit. Where no wall will do, it says what would.',
    hash: '#/site',
    target: '.verdict',
  },
  {
    title: 'The walls, best first',
    text: 'Each with its peak, its margin and the reason for its place. A wall that cannot be earthed or reached by the cable is out, however cool. Choose one to see its day further down.',
    hash: '#/site',
    target: '.ranking',
  },
  {
    title: 'What the page knows of the site',
    text: 'Place, building, what shades it, box, limits, distances, clearances. What you do not enter has a default, and is listed as an assumption below. Units may be typed: "12 in", "115 degF".',
    hash: '#/site',
    target: '#site-form',
  },
  {
    title: 'The day on the chosen wall',
    text: 'Inside, outside and limit through the day, in a chart and in words; the heat that comes in and goes out at the peak.',
    hash: '#/site',
    target: '.day',
  },
  {
    title: 'What would help, and how sure it is',
    text: 'Remedies by what they gain and the work they take; how the peak moves when the guesses among the inputs are wrong; the coldest night. It is computed when you come to it.',
    hash: '#/site',
    target: '.advices',
  },
  {
    title: 'Kept, sent, printed',
    text: 'Sites stay in this browser, without a network as well, and go to the server where there is one. A link holds a whole site; a file does, too.',
    hash: '#/site',
    target: '.sites',
  },
  {
    title: 'A region',
    text: 'A table of addresses or a grid: which of them will cook, on which walls, and what has to be on the truck. It needs the server.',
    hash: '#/area',
    target: 'main',
  },
  {
    title: 'A lesson',
    text: 'For a room of trainees: guess first, then see the day computed, played and explained, down to the equations and their sources.',
    hash: '#/lesson',
    target: 'main',
  },
];
