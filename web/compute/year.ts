/** What the page and the worker of the year say to each other. */
import type { Site, WeatherYear, YearResult } from '../../model/index.ts';

/** Where a year of weather comes from: a file of the person's own, which stays in the browser, or the site's climate sample. */
export type WeatherChoice =
  | { readonly kind: 'file'; readonly file: File }
  | { readonly kind: 'invented'; readonly seed: number };

/** What is said about a year of weather. */
export type WeatherTold = Omit<WeatherYear, 'at' | 'length' | 'windHeightM'>;

export type YearRequest =
  | { readonly kind: 'read'; readonly weather: WeatherChoice; readonly site: Site }
  | { readonly kind: 'reckon'; readonly weather: WeatherChoice; readonly site: Site };

export type YearReply =
  | { readonly kind: 'weather'; readonly weather: WeatherTold }
  /** Walls done, of so many. */
  | { readonly kind: 'progress'; readonly done: number; readonly of: number }
  | { readonly kind: 'years'; readonly years: readonly YearResult[] }
  /** The weather cannot be used. */
  | { readonly kind: 'refused'; readonly message: string }
  | { readonly kind: 'failed'; readonly message: string };
