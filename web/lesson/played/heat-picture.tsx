/** The heat of a moment: arrows into the box and out of it, as thick as their watts. */
import type { PlayedDay, UnitSystem } from '../../../model/index.ts';
import { formatQuantity } from '../../../model/index.ts';
import { useSize } from '../use-size.ts';
import { balance } from './balance.ts';
import { arrowPx, type HeatArrow, heatArrows } from './heat-arrows.ts';

interface HeatPictureProps {
  readonly played: PlayedDay;
  readonly step: number;
  readonly units: UnitSystem;
  /** What the thickest arrow stands for, W: the same for all boxes. */
  readonly largestW: number;
  readonly description: string;
}

/** Narrower than so many letters, the words of the arrows become smaller. */
const WIDE_LETTERS = 27;

/** The thickest arrow, in letters. */
const THICKEST_LETTERS = 2;
/** Room for the words above each arrow, in letters. */
const WORDS_LETTERS = 1.35;

interface Row extends HeatArrow {
  readonly y: number;
  readonly px: number;
}

export function HeatPicture({ played, step, units, largestW, description }: HeatPictureProps) {
  const { ref, size } = useSize();
  const { widthPx } = size;
  const fontPx = size.fontPx * Math.min(1, widthPx / (WIDE_LETTERS * size.fontPx));
  const ledger = played.ledgers[step];
  if (ledger === undefined) return null;
  const arrows = heatArrows(ledger);
  const rowsOf = (side: HeatArrow['side']): Row[] => {
    let y = 0;
    return arrows
      .filter((arrow) => arrow.side === side)
      .map((arrow) => {
        const px = arrowPx(arrow.watts, largestW, THICKEST_LETTERS * fontPx);
        const room = (WORDS_LETTERS + 0.5) * fontPx + px;
        y += room;
        return { ...arrow, px, y: y - px / 2 - 0.3 * fontPx };
      });
  };
  const [ins, outs] = [rowsOf('in'), rowsOf('out')];
  const height = Math.max(fontPx * 9, ...[...ins, ...outs].map(({ y, px }) => y + px / 2 + fontPx * 0.5));
  const boxWidth = Math.min(widthPx * 0.24, fontPx * 9);
  const [left, right] = [(widthPx - boxWidth) / 2, (widthPx + boxWidth) / 2];
  const { storedW } = balance(ledger);
  const insideC = played.result.insideAirC[step] ?? 0;
  return (
    <div ref={ref} class="scene heat-picture">
      <svg
        role="img"
        aria-label={description}
        width={widthPx}
        height={height}
        viewBox={`0 0 ${widthPx} ${height}`}
        font-size={fontPx}
      >
        {ins.map((row) => (
          <Arrow key={row.key} row={row} from={0} to={left} fontPx={fontPx} />
        ))}
        {outs.map((row) => (
          <Arrow key={row.key} row={row} from={right} to={widthPx} fontPx={fontPx} />
        ))}
        <rect class="heat-box" x={left} y={1.5} width={boxWidth} height={height - 3} />
        <text class="at-middle heat-inside" x={widthPx / 2} y={height / 2 - fontPx * 0.5} font-size={fontPx * 1.2}>
          {formatQuantity('temperature', insideC, units)}
        </text>
        <text class="at-middle" x={widthPx / 2} y={height / 2 + fontPx * 1.1}>
          {storedW < 0 ? 'gives off' : 'stores'}
        </text>
        <text class="at-middle" x={widthPx / 2} y={height / 2 + fontPx * 2.3}>
          {Math.abs(storedW).toFixed(1)} W
        </text>
      </svg>
    </div>
  );
}

function Arrow({ row, from, to, fontPx }: { row: Row; from: number; to: number; fontPx: number }) {
  const { y, px, side, words, watts } = row;
  const head = Math.max(fontPx * 0.5, px * 0.7);
  const half = px / 2;
  const wing = half + fontPx * 0.25;
  const neck = to - head;
  return (
    <g class={`heat-arrow heat-${side}`}>
      <path d={`M${from} ${y - half}H${neck}V${y - wing}L${to} ${y}L${neck} ${y + wing}V${y + half}H${from}Z`} />
      <text x={from + fontPx * 0.3} y={y - wing - fontPx * 0.2}>
        {words} <tspan class="heat-watts">{watts.toFixed(1)} W</tspan>
      </text>
    </g>
  );
}
