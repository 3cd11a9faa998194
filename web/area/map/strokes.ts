/** Signs, lines and words of a map, each with a white rim, so that it is seen on any ground. */

interface Sign {
  readonly x: number;
  readonly y: number;
  readonly scale: number;
  readonly fill: string;
}

/** A white rim parts signs that overlap. */
export function sign(context: CanvasRenderingContext2D, path: Path2D, { x, y, scale, fill }: Sign) {
  context.save();
  context.translate(x, y);
  context.scale(scale, scale);
  context.lineJoin = 'round';
  context.lineWidth = 3.5 / scale;
  context.strokeStyle = '#fff';
  context.stroke(path);
  context.fillStyle = fill;
  context.fill(path, 'evenodd');
  context.lineWidth = 1.25 / scale;
  context.strokeStyle = '#000';
  context.stroke(path);
  context.restore();
}

export const STAMP_PX = 16;
const STAMP_SCALE = 0.7;

/** A sign drawn once, to be printed many thousand times. */
export function stamp(path: Path2D, fill: string, pixelRatio: number): HTMLCanvasElement {
  const canvas = document.createElement('canvas');
  canvas.width = canvas.height = Math.round(STAMP_PX * pixelRatio);
  const context = canvas.getContext('2d');
  if (context !== null) {
    context.scale(canvas.width / STAMP_PX, canvas.width / STAMP_PX);
    sign(context, path, { x: STAMP_PX / 2, y: STAMP_PX / 2, scale: STAMP_SCALE, fill });
  }
  return canvas;
}

/** Draws a line in black on a wider white one, so that it is seen on any ground. */
export function rimmed(context: CanvasRenderingContext2D, width: number, trace: () => void) {
  for (const [style, lineWidth] of [
    ['#fff', width + 4],
    ['#000', width],
  ] as const) {
    context.beginPath();
    trace();
    context.strokeStyle = style;
    context.lineWidth = lineWidth;
    context.stroke();
  }
}

export function written(context: CanvasRenderingContext2D, text: string, x: number, y: number) {
  context.lineWidth = 4;
  context.lineJoin = 'round';
  context.strokeStyle = '#fff';
  context.strokeText(text, x, y);
  context.fillStyle = '#000';
  context.fillText(text, x, y);
}
