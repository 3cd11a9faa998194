/** Where the installer writes: readings, name, date, signature. */
import { type UnitSystem, unitSymbol } from '../../model/index.ts';
import { type Area, GREY, INK, type Pen } from './pen.ts';

const ROWS = (units: UnitSystem) => [
  [
    { label: 'Earth resistance, ohm, measured with', share: 0.36 },
    { label: `Sensor of the unit, ${unitSymbol('temperature', units)}`, share: 0.22 },
    { label: 'read on (date, time)', share: 0.2 },
    { label: 'sun, cloud, wind', share: 0.22 },
  ],
  [
    { label: 'Name', share: 0.36 },
    { label: 'Date', share: 0.22 },
    { label: 'Signature', share: 0.42 },
  ],
];

export const SIGN_OFF_HEIGHT = 62;

export function drawSignOff(pen: Pen, units: UnitSystem, { x, y, width, height }: Area): void {
  const { doc } = pen;
  const rows = ROWS(units);
  const high = height / rows.length;
  pen.part(
    'Form',
    () => {
      doc.lineWidth(0.8).rect(x, y, width, height).stroke(INK);
      for (const [k, row] of rows.entries()) {
        const top = y + k * high;
        if (k > 0)
          doc
            .lineWidth(0.5)
            .moveTo(x, top)
            .lineTo(x + width, top)
            .stroke(INK);
        let at = x;
        for (const { label, share } of row) {
          if (at > x)
            doc
              .lineWidth(0.5)
              .moveTo(at, top)
              .lineTo(at, top + high)
              .stroke(INK);
          pen.paragraph(label, { x: at + 4, y: top + 3, width: share * width - 6 }, { size: 6.5, colour: GREY }, 1);
          at += share * width;
        }
      }
    },
    'Fields to fill in: earth resistance, sensor reading, name, date, signature',
  );
}
