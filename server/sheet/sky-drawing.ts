/** The sun diagram of the wall on paper: the sky unrolled, the sun's paths, what hides them. */
import { clockReader, compassPoint, pathRuns, type SiteSheet, silhouetteAreas, skyChart } from '../../model/index.ts';
import { type Area, GREY, HAIR, heading, INK, type Pen } from './pen.ts';

const SMALL = { size: 6.2, colour: GREY } as const;

/** Paths that the sun reaches the box along, on the design day and on others. */
const LIT = { width: 2.2, colour: '#d55e00' } as const;
const FREE = { width: 0.8, colour: '#d55e00' } as const;

type Points = readonly (readonly [number, number])[];

export function drawSky(pen: Pen, { diagram, timeZone, wall }: SiteSheet, area: Area): void {
  const { doc } = pen;
  const top = heading(pen, 'The sun over the year, seen from the box', area);
  const frame = { left: area.x + 14, top, right: area.x + area.width - 2, bottom: area.y + area.height - 22 };
  const clock = clockReader(timeZone);
  const chart = skyChart(frame, diagram.wallAzimuthDeg);
  const trace = (points: Points, close = false) => {
    for (const [k, [x, y]] of points.entries()) {
      if (k === 0) doc.moveTo(x, y);
      else doc.lineTo(x, y);
    }
    if (close) doc.closePath();
  };

  const draw = () => {
    doc.save();
    doc.rect(frame.left, frame.top, frame.right - frame.left, frame.bottom - frame.top).clip();
    for (const silhouette of diagram.silhouettes) {
      for (const outline of silhouetteAreas(silhouette, chart)) {
        trace(outline, true);
        doc
          .lineWidth(0.4)
          .fillOpacity(1 - silhouette.transmittance)
          .fillAndStroke('#d9d9d4', '#77776f')
          .fillOpacity(1);
      }
    }
    for (const path of diagram.paths) {
      for (const { degree, points } of pathRuns(path, chart)) {
        const { width, colour } =
          degree === 'none' ? { width: path.isDesignDay ? 1.2 : 0.5, colour: INK } : path.isDesignDay ? LIT : FREE;
        if (degree === 'none') doc.dash(1.5, { space: 1.5 });
        trace(points);
        doc.lineWidth(width).stroke(colour).undash();
      }
      if (path.isDesignDay) {
        for (const { utc, azimuthDeg, elevationDeg } of path.points) {
          const time = clock(utc);
          if (!/:00$/.test(time) || Number(time.slice(0, 2)) % 3 !== 0) continue;
          const turned = azimuthDeg + 360 * Math.round((diagram.wallAzimuthDeg - azimuthDeg) / 360);
          const [px, py] = chart.at(turned, elevationDeg);
          doc.circle(px, py, 1.6).fill(INK);
          const above = py - 8.5 > frame.top ? py - 8.5 : py + 2.5;
          const hour = { size: 6, bold: true, align: 'center' } as const;
          // Behind the wall an hour may lie at the very edge, where its label would be cut.
          const middle = Math.min(frame.right - 5, Math.max(frame.left + 5, px));
          pen.paragraph(String(Number(time.slice(0, 2))), { x: middle - 8, y: above, width: 16 }, hour, 1);
        }
      }
    }
    doc.restore();
    doc
      .lineWidth(0.6)
      .rect(frame.left, frame.top, frame.right - frame.left, frame.bottom - frame.top)
      .stroke(INK);
    for (const elevation of [30, 60]) {
      const [, y] = chart.at(diagram.wallAzimuthDeg, elevation);
      doc.lineWidth(0.3).moveTo(frame.left, y).lineTo(frame.right, y).stroke(HAIR);
      pen.paragraph(`${elevation}°`, { x: area.x - 2, y: y - 3, width: 14 }, { ...SMALL, align: 'right' }, 1);
    }
    for (let bearing = 0; bearing < 360; bearing += 45) {
      const turned = bearing + 360 * Math.round((diagram.wallAzimuthDeg - bearing) / 360);
      const [x, y] = chart.at(turned, 0);
      if (x < frame.left + 6 || x > frame.right - 6) continue;
      pen.paragraph(compassPoint(bearing), { x: x - 12, y: y + 2, width: 24 }, { ...SMALL, align: 'center' }, 1);
    }
    const words = 'thick: design day, with hours; orange: sun on the box; dotted: hidden; grey: hides the sky';
    pen.paragraph(
      words,
      { x: frame.left, y: frame.bottom + 9, width: frame.right - frame.left },
      { ...SMALL, size: 5.6 },
      2,
    );
  };
  const hours = diagram.paths.find(({ isDesignDay }) => isDesignDay)?.litHours ?? 0;
  pen.part(
    'Figure',
    draw,
    `Sun diagram of wall ${wall.name}: on the design day ${hours.toFixed(1)} h with sun on the box, however weak`,
  );
}
