import type { Site } from '../site.ts';
import type { DayOptions, DayResult } from './results.ts';

export function evaluateDay(_site: Site, _wallName: string, _options: DayOptions = {}): DayResult {
  throw new Error('being built');
}
