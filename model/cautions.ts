/** What to mind at the wall, by the part of the work; shown wherever a siting is shown. Never a permission. */

export type WorkPart = 'forecast' | 'ladder' | 'electricity' | 'earthing' | 'lines' | 'hotSurfaces' | 'eyes' | 'heat';

export interface WorkCaution {
  readonly part: WorkPart;
  readonly heading: string;
  readonly text: string;
}

/** What holds on every site: common practice, no source. Local rules and the maker's own come before it. */
export const WORK_CAUTIONS: readonly WorkCaution[] = [
  {
    part: 'ladder',
    heading: 'Ladder',
    text: 'Set a ladder on firm level ground, keep three points of contact, have a second person where you reach out.',
  },
  {
    part: 'electricity',
    heading: 'Electricity',
    text: 'Take every conductor and metal part for live until it is tested. Stay out of meters and panels without a licence for them.',
  },
  {
    part: 'earthing',
    heading: 'Earthing',
    text: 'Earthing, bonding and mains work belong to licensed practice and follow the local code, whatever this ranking says.',
  },
  {
    part: 'lines',
    heading: 'Lines',
    text: 'Look for buried and overhead lines before you drill, dig or drive an electrode.',
  },
  {
    part: 'hotSurfaces',
    heading: 'Hot surfaces',
    text: 'A sunlit enclosure or metal wall can burn skin at a touch; let it cool or wear gloves.',
  },
  {
    part: 'eyes',
    heading: 'Eyes',
    text: 'Never look into a fibre end or connector: the light is invisible and can hurt the eye. Collect every fibre scrap.',
  },
  {
    part: 'heat',
    heading: 'Heat',
    text: 'On a hot day drink, rest in the shade, and do the sunlit wall early; stop at dizziness or cramps.',
  },
  {
    part: 'forecast',
    heading: 'Forecast',
    text: 'A forecast is not a measurement: it rests on the assumptions listed with it. Check the temperature on site.',
  },
];

/** Where there is one, or one is moved. Common practice, no source. */
export const BATTERY_CAUTION =
  'A battery can burn, gas and spill acid: open its fuse or take off its negative lead first, keep metal off its poles, lift it with help, give it air; its maker and local rules decide.';

/** The cautions of every site as sentences. */
export const CAUTIONS: readonly string[] = WORK_CAUTIONS.map(({ text }) => text);
