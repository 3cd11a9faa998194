/** What to mind at the wall; shown wherever a siting is shown. */
export const CAUTIONS: readonly string[] = [
  'A forecast is not a measurement: it rests on the assumptions listed with it. Check the temperature on site.',
  'Earthing, bonding and mains work belong to licensed practice and follow the local code, whatever this ranking says.',
  'Look for buried and overhead lines before you drill, dig or drive an electrode.',
  'Ladder: firm level ground, three points of contact, a second person where you reach out.',
  'A sunlit enclosure or metal wall can burn skin at a touch; let it cool or wear gloves.',
  'Never look into a fibre end or connector: the light is invisible and can hurt the eye. Collect every fibre scrap.',
  'Hot day: drink, rest in the shade, and do the sunlit wall early; stop at dizziness or cramps.',
];
