/** The day as curves. The drawing code comes when it is first needed; until then, and without it, the text says it all. */
import { useEffect, useReducer, useRef, useState } from 'preact/hooks';
import { onThemeShown } from '../theme.ts';
import type { DayPlot } from './day-plot.ts';
import type { DaySeries } from './day-series.ts';

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
    return () => {
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
