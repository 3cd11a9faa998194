/** The World Magnetic Model, in a file of its own so that it is loaded only where somebody holds a compass. */
import geomagnetism, { type GeomagnetismModel } from 'geomagnetism';

/** The model of a date; null where the date lies outside the years that it is made for. */
export function modelOf(date: Date): GeomagnetismModel | null {
  try {
    return geomagnetism.model(date);
  } catch {
    return null;
  }
}
