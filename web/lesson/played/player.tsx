/** The day, played: scrubbed, run or stepped by the hour; boxes side by side at the same moment, with their balance. */
import { useId, useMemo } from 'preact/hooks';
import { compassPoint, formatQuantity, type UnitSystem } from '../../../model/index.ts';
import { dateText, placeClock } from '../../site/place-clock.ts';
import { LEDGER_WORDS, unbroken } from '../../site/words.ts';
import type { Curve } from '../comparison/day-curves.tsx';
import { ExplainButton } from '../explain/explain-button.tsx';
import { BalanceTable } from './balance-table.tsx';
import { type FaceClasses, faceClasses, mostTakenInW } from './face-classes.ts';
import { FaceKey } from './face-key.tsx';
import { heatArrows, largestFlowW, SUMMED_ARROWS } from './heat-arrows.ts';
import { HeatPicture } from './heat-picture.tsx';
import { PlanScene } from './plan-scene.tsx';
import { sceneWords } from './scene.ts';
import { SideScene } from './side-scene.tsx';
import { Story } from './story-text.tsx';
import { type Play, usePlay } from './use-play.ts';

interface PlayerProps {
  readonly boxes: readonly Curve[];
  readonly units: UnitSystem;
  readonly step: number;
  onStep(step: number): void;
}

export function Player({ boxes, units, step, onStep }: PlayerProps) {
  const id = useId();
  const days = useMemo(() => boxes.map(({ played }) => played), [boxes]);
  const classes = useMemo(() => faceClasses(mostTakenInW(days)), [days]);
  const largestW = useMemo(() => largestFlowW(days.flatMap(({ ledgers }) => ledgers)), [days]);
  const [first] = days;
  const steps = Math.min(...days.map(({ result }) => result.stepsUtc.length));
  const play = usePlay(step, steps, onStep);
  if (first === undefined) return null;
  const clock = placeClock(first.result.timeZone);
  const time = clock.time(first.result.stepsUtc[step] ?? first.result.peakAtUtc);
  const perHour = Math.round(3600 / first.stepS);
  const hourBy = (hours: number) => onStep(Math.max(0, Math.min(steps - 1, step + hours * perHour)));
  return (
    <section class="player" aria-labelledby={id}>
      <h3 id={id}>The day, played: {dateText(first.result.date, units)}</h3>
      <Controls play={play} step={step} steps={steps} time={time} onStep={onStep} hourBy={hourBy}>
        {unbroken(
          `${time}. ${boxes.map(({ letter, played }) => `${letter} ${formatQuantity('temperature', played.result.insideAirC[step] ?? 0, units)}`).join(', ')}`,
        )}
      </Controls>
      <div class="played-boxes">
        {boxes.map((box) => (
          <PlayedBox key={box.letter} box={box} step={step} units={units} classes={classes} largestW={largestW} />
        ))}
      </div>
      <FaceKey classes={classes} />
      <p>
        First from above, north up, the box drawn large; then from the side, true to scale. The line of the sun ends in
        an arrow where direct sun reaches the box. Arrows of heat are as thick as their watts; the thickest stands for{' '}
        {formatQuantity('power', largestW, units)}. {summedWords()}
      </p>
      <BalanceTable boxes={boxes} step={step} time={time} units={units} />
      <Story boxes={boxes} units={units} />
    </section>
  );
}

/** The arrows are fewer than the lines of the balance; told beside both, because lines of one arrow may differ in sign. */
function summedWords(): string {
  const sums = SUMMED_ARROWS.map(
    ({ words, paths }) => `“${words}” of ${paths.map((path) => `“${LEDGER_WORDS[path]}”`).join(' and ')}`,
  );
  return `An arrow may be the sum of several lines of the balance below, what goes in less what goes out: ${sums.join('; ')}.`;
}

interface ControlsProps {
  readonly play: Play;
  readonly step: number;
  readonly steps: number;
  readonly time: string;
  readonly children: string;
  onStep(step: number): void;
  hourBy(hours: number): void;
}

function Controls({ play, step, steps, time, children, onStep, hourBy }: ControlsProps) {
  const byHand = (move: () => void) => () => {
    play.pause();
    move();
  };
  return (
    <div class="player-controls">
      <div class="buttons">
        {play.mayRun && (
          <button type="button" onClick={play.playing ? play.pause : play.start}>
            {play.playing ? 'Pause' : 'Play the day'}
          </button>
        )}
        <button type="button" onClick={byHand(() => hourBy(-1))}>
          Hour back
        </button>
        <button type="button" onClick={byHand(() => hourBy(1))}>
          Hour on
        </button>
        <output class="player-time">{time}</output>
      </div>
      <label>
        <span class="visually-hidden">Time of the day</span>
        <input
          type="range"
          min={0}
          max={steps - 1}
          step={1}
          value={step}
          aria-valuetext={children}
          onInput={({ currentTarget }) => {
            play.pause();
            onStep(Number(currentTarget.value));
          }}
        />
      </label>
    </div>
  );
}

interface PlayedBoxProps {
  readonly box: Curve;
  readonly step: number;
  readonly units: UnitSystem;
  readonly classes: FaceClasses;
  readonly largestW: number;
}

function PlayedBox({ box, step, units, classes, largestW }: PlayedBoxProps) {
  const { letter, label, played } = box;
  const words = unbroken(sceneWords(played, step, compassPoint));
  const ledger = played.ledgers[step];
  const flows = ledger === undefined ? [] : heatArrows(ledger);
  const heat = flows.map(({ words: way, watts, side }) => `${way} ${watts.toFixed(1)} W ${side}`).join(', ');
  return (
    <section class="played-box" aria-label={`Box ${letter}`}>
      <h4>
        <b class="box-letter">{letter}</b>{' '}
        <ExplainButton played={played} what="insideAir" step={step}>
          {formatQuantity('temperature', played.result.insideAirC[step] ?? 0, units)}
        </ExplainButton>{' '}
        <span class="box-label">{label}</span>
      </h4>
      <div class="scenes">
        <PlanScene played={played} step={step} classes={classes} description={`From above. ${words}`} />
        <SideScene played={played} step={step} classes={classes} description={`From the side. ${words}`} />
      </div>
      <p class="scene-words">{words}</p>
      <HeatPicture played={played} step={step} units={units} largestW={largestW} description={`Heat. ${heat}.`} />
    </section>
  );
}
