/** The day as curves. The drawing code comes when it is first needed; until then, and without it, the text says it all. */
import { useEffect, useReducer, useRef, useState } from 'preact/hooks';
import { onThemeShown } from '../theme.ts';
import type { DayPlot } from './day-plot.ts';
import type { DaySeries } from './day-series.ts';

/** Within the margins of A4 and US Letter at the 96 px an inch that browsers print with. */
const PAPER_PX = { width: 640, height: 340 } as const;

export function DayChart({ series, summary }: { series: DaySeries; summary: string }) {
  const canvas = useRef<HTMLCanvasElement>(null);
  const [failed, setFailed] = useState(false);
  // The plot takes its colours when it is drawn.
  const [theme, redraw] = useReducer((count: number) => count + 1, 0);
  useEffect(() => onThemeShown(() => redraw(undefined)), []);

  useEffect(() => {
    let plot: DayPlot | null = null;
    let gone = false;
    import('./day-plot.ts')
      .then(({ plotDay }) => {
        if (!gone && canvas.current) plot = plotDay(canvas.current, series);
      })
      .catch(() => setFailed(true));
    // A canvas does not flow like text: it is drawn again at the width of the paper, and back.
    const toPaper = () => plot?.resize(PAPER_PX.width, PAPER_PX.height);
    const toScreen = () => plot?.resize();
    addEventListener('beforeprint', toPaper);
    addEventListener('afterprint', toScreen);
    return () => {
      removeEventListener('beforeprint', toPaper);
      removeEventListener('afterprint', toScreen);
      gone = true;
      plot?.destroy();
    };
  }, [series, theme]);

  if (failed) return <p>The curves could not be loaded. The table below holds the same figures.</p>;
  return (
    <div class="day-chart">
      <canvas ref={canvas} role="img" aria-label={`Curves of the day. ${summary}`} />
    </div>
  );
}
