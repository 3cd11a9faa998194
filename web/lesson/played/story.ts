/** The played day in words: a paragraph for each quarter of the day, made of the same figures as the pictures. */
import { FACES, type Face, formatQuantity, lowered, type PlayedDay, type UnitSystem } from '../../../model/index.ts';
import { placeClock } from '../../site/place-clock.ts';
import { hoursText, unbroken } from '../../site/words.ts';
import { takenInW } from './face-classes.ts';
import { heatArrows } from './heat-arrows.ts';

/** A box of the story, by the letter that the pictures give it. */
export interface ToldBox {
  /** "A" */
  readonly letter: string;
  readonly played: PlayedDay;
}

export interface Quarter {
  /** "06:00 to 12:00" */
  readonly title: string;
  readonly text: string;
}

const QUARTER_MINUTES = 360;

const TITLES = ['00:00 to 06:00', '06:00 to 12:00', '12:00 to 18:00', '18:00 to 24:00'];

/** Less sun than this on every face is not worth a sentence, W. */
const LEAST_SUN_W = 0.5;

export function dayStory(boxes: readonly ToldBox[], units: UnitSystem): Quarter[] {
  const [first] = boxes;
  if (first === undefined) return [];
  const clock = placeClock(first.played.result.timeZone);
  const steps = TITLES.map((): number[] => []);
  first.played.result.stepsUtc.forEach((utc, step) => {
    steps[Math.floor(clock.minutes(utc) / QUARTER_MINUTES)]?.push(step);
  });
  return TITLES.flatMap((title, k) => {
    const within = steps[k] ?? [];
    if (within.length === 0) return [];
    const sentences = [
      sunSentence(first.played, within),
      airSentence(first.played, within, units),
      ...boxes.map((box) => boxSentence(box, within, units)),
      ...apartSentence(boxes, within, units),
    ];
    return [{ title, text: unbroken(sentences.join(' ')) }];
  });
}

function sunSentence({ suns, result }: PlayedDay, steps: readonly number[]): string {
  const clock = placeClock(result.timeZone);
  const time = (step: number) => clock.time(result.stepsUtc[step] ?? result.peakAtUtc);
  const up = steps.filter((step) => (suns[step]?.elevationDeg ?? -90) > 0);
  const [rise, set] = [up[0], up.at(-1)];
  if (rise === undefined || set === undefined) return 'The sun is down.';
  const highest = Math.round(Math.max(...up.map((step) => suns[step]?.elevationDeg ?? 0)));
  const rises = rise === steps[0] ? '' : ` It rises at ${time(rise)}.`;
  const sets = set === steps.at(-1) ? '' : ` It sets at ${time(set)}.`;
  return `The sun stands at most ${highest}° high.${rises}${sets}`;
}

function airSentence({ result }: PlayedDay, steps: readonly number[], units: UnitSystem): string {
  return `The outside air ${courseText(result.outsideAirC, steps, units)}.`;
}

function boxSentence({ letter, played }: ToldBox, steps: readonly number[], units: UnitSystem): string {
  const { result, ledgers } = played;
  const parts = [`In box ${letter} the air ${courseText(result.insideAirC, steps, units)}`, sunText(played, steps)];
  const last = ledgers[steps.at(-1) as number];
  const way = last && heatArrows(last).find(({ side }) => side === 'out');
  if (way)
    parts.push(`at the end most heat leaves to ${OUTWARD[way.key] ?? lowered(way.words)}, ${way.watts.toFixed(1)} W`);
  const over = hoursOver(played, steps);
  if (over > 0) parts.push(`it is over the limit for ${hoursText(over)}`);
  return `${parts.join('; ')}.`;
}

/** "warms from 30.1 °C to 44.0 °C", with the peak where it lies in between. */
function courseText(celsius: readonly number[], steps: readonly number[], units: UnitSystem): string {
  const temperature = (c: number) => formatQuantity('temperature', c, units);
  const [from, to] = [celsius[steps[0] as number] as number, celsius[steps.at(-1) as number] as number];
  const peak = Math.max(...steps.map((step) => celsius[step] as number));
  const over = temperature(peak) === temperature(Math.max(from, to)) ? '' : `, at most ${temperature(peak)}`;
  if (temperature(from) === temperature(to)) return `stays near ${temperature(to)}${over}`;
  return `${to > from ? 'warms' : 'cools'} from ${temperature(from)} to ${temperature(to)}${over}`;
}

const FACE_WORDS: Record<Face, string> = {
  front: 'the front',
  left: 'the left side',
  right: 'the right side',
  top: 'the top',
  bottom: 'the underside',
  back: 'the back',
};

function sunText(played: PlayedDay, steps: readonly number[]): string {
  const clock = placeClock(played.result.timeZone);
  let most = { watts: 0, face: 'front' as Face, step: steps[0] as number };
  for (const step of steps) {
    for (const face of FACES) {
      const watts = takenInW(played, face, step);
      if (watts > most.watts) most = { watts, face, step };
    }
  }
  if (most.watts < LEAST_SUN_W) return 'no face takes in sun worth naming';
  const at = clock.time(played.result.stepsUtc[most.step] ?? played.result.peakAtUtc);
  return `${FACE_WORDS[most.face]} takes in the most sun, ${most.watts.toFixed(1)} W at ${at}`;
}

function hoursOver({ result, site, stepS }: PlayedDay, steps: readonly number[]): number {
  const limited = { insideAir: result.insideAirC, outsideAir: result.outsideAirC, componentCase: result.electronicsC };
  const celsius = limited[site.limits.refersTo];
  return (steps.filter((step) => (celsius[step] as number) > site.limits.maxC).length * stepS) / 3600;
}

function apartSentence(boxes: readonly ToldBox[], steps: readonly number[], units: UnitSystem): string[] {
  const [a, b] = boxes;
  const last = steps.at(-1) as number;
  if (a === undefined || b === undefined) return [];
  const apartK = (b.played.result.insideAirC[last] as number) - (a.played.result.insideAirC[last] as number);
  const size = formatQuantity('temperatureDifference', Math.abs(apartK), units);
  // As it is read, not as it is computed: "0 °F hotter" would be no difference with a direction.
  if (size === formatQuantity('temperatureDifference', 0, units)) {
    return [`In the end ${a.letter} and ${b.letter} are as warm as each other.`];
  }
  return [`In the end ${b.letter} is ${size} ${apartK < 0 ? 'cooler' : 'hotter'} than ${a.letter}.`];
}

/** Where heat goes, after "to". */
const OUTWARD: Readonly<Record<string, string>> = {
  air: 'the outside air',
  sky: 'the sky',
  ground: 'the ground',
  wall: 'the wall',
  around: 'the things around',
  hood: 'the hood',
  vents: 'the air through the vents',
};
