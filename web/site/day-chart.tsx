/** The day as curves. The drawing code comes when it is first needed; until then, and without it, the text says it all. */
import { useEffect, useRef, useState } from 'preact/hooks';
import type { DayPlot } from './day-plot.ts';
import type { DaySeries } from './day-series.ts';

export function DayChart({ series, summary }: { series: DaySeries; summary: string }) {
  const canvas = useRef<HTMLCanvasElement>(null);
  const [failed, setFailed] = useState(false);

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
  }, [series]);

  if (failed) return <p>The curves could not be loaded. The table below holds the same figures.</p>;
  return (
    <div class="day-chart">
      <canvas ref={canvas} role="img" aria-label={`Curves of the day. ${summary}`} />
    </div>
  );
}
