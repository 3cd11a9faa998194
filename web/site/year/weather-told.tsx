/** What a year of weather holds: where from, at which time its sun stands, what was mended. */
import type { UnitSystem } from '../../../model/index.ts';
import { formatQuantity } from '../../../model/index.ts';
import type { WeatherTold } from '../../compute/year.ts';
import { unbroken } from '../words.ts';
import { zoneName } from './year-words.ts';

export function WeatherWords({ weather, units }: { weather: WeatherTold; units: UnitSystem }) {
  const { timeBase, notes } = weather;
  const { latitudeDeg, longitudeDeg, altitudeM } = weather;
  const north = `${Math.abs(latitudeDeg)}° ${latitudeDeg < 0 ? 'south' : 'north'}`;
  const east = `${Math.abs(longitudeDeg)}° ${longitudeDeg < 0 ? 'west' : 'east'}`;
  const place = `${north}, ${east}, ${formatQuantity('length', altitudeM, units, 0)}`;
  const facts = [
    ['Weather of', [weather.title, place].filter(Boolean).join('; ')],
    ['Format', `${weather.format}, told in ${zoneName(weather.zoneOffsetH)}`],
    ['Source', weather.source],
    ['Rows are, by format,', timeBase.declaredRule],
    [
      'Their sun was found',
      timeBase.foundShiftMin === null ? 'at no time: not checked' : shiftWords(timeBase.foundShiftMin),
    ],
    ['Irradiance closes within', timeBase.residualWm2 === null ? '' : `${timeBase.residualWm2.toFixed(1)} W/m²`],
  ].filter(([, text]) => text !== '');
  return (
    <div class="weather-told">
      <dl>
        {facts.map(([term, text]) => (
          <div key={term}>
            <dt>{term}</dt>
            <dd>{unbroken(text ?? '')}</dd>
          </div>
        ))}
      </dl>
      <p class={timeBase.corrected ? 'time-corrected' : ''}>{squared(timeBase.text)}</p>
      {notes.length > 0 ? (
        <ul class="weather-notes" aria-label="What was filled in or left out">
          {notes.map((note) => (
            <li key={note}>{unbroken(squared(note))}</li>
          ))}
        </ul>
      ) : (
        <p>No value was missing.</p>
      )}
    </div>
  );
}

function shiftWords(minutes: number): string {
  const size = Math.round(Math.abs(minutes) * 10) / 10;
  return size === 0 ? 'at the label' : `${size} min ${minutes < 0 ? 'before' : 'after'} the label`;
}

const squared = (text: string): string => text.replaceAll('W/m2', 'W/m²');
