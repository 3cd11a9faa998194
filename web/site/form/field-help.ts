/** Plain words for fields whose name alone does not explain them. */
import type { FieldPath } from '../../../model/index.ts';

const HELP: Partial<Record<FieldPath, string>> = {
  'place.latitudeDeg': 'South of the equator: with a minus sign.',
  'place.longitudeDeg': 'West of Greenwich: with a minus sign.',
  'climate.designDay.dailyRangeK': 'From the coolest hour of the night to the hottest of the afternoon.',
  'climate.designDay.dewPointC': 'How damp the air is. Dry air lets more heat escape to the sky.',
  'climate.designDay.windMs': 'Little wind is the hot case.',
  'climate.designDay.linkeTurbidity':
    'How hazy the clear sky is: low in clean mountain air, high over a dusty or smoky plain.',
  'climate.windFromDeg':
    'A wall that the wind meets has more of it than one in the lee. Left empty: not known, every wall has a quarter of its speed.',
  'climate.coldNight.minC': 'The lowest that the place has seen, or that the equipment must stand.',
  'climate.coldNight.dewPointC': 'Left empty: as moist as the air can be.',
  'climate.coldNight.cloudFraction': 'A clear sky draws heat out of the box, below the temperature of the air.',
  'ground.albedo': 'Share of the sunlight that the ground throws back: little for soil, much for pale gravel or snow.',
  'box.solarAbsorptance': 'Share of the sunlight that the finish soaks up: low for white, near 1 for black.',
  'box.emittance': 'How well the finish gives off heat by radiation: high for paint and plastic, low for bare metal.',
  'box.powerW': 'The average electrical power that turns into heat in the box, not the rating on the label.',
  'box.vents.lowAreaM2': 'What is open between bars and meshes, not the hole in the sheet.',
  'box.vents.dischargeCoefficient': 'Less behind a filter or a fine mesh.',
  'box.battery.powerW': 'None while it is kept charged.',
  'box.compartments.lowerPowerW': 'Part of the heat given off inside, not beside it.',
  'walls[].windShelter': '1 where the wind is free, 0 in dead air. Left empty: from the direction of the wind.',
  'walls[].azimuthDeg': 'Stand with your back to the wall and read where you look. A compass point such as SW will do.',
  'box.hood.solarAbsorptance': 'Share of the sunlight that the hood soaks up: low for white, near 1 for black.',
  'walls[].obstructions[].transmittance': '0 for a solid wall; more for a picket fence, a hedge or a shade net.',
  'walls[].solarAbsorptance': 'Share of the sunlight that the wall soaks up.',
  'walls[].emittance': 'How well the wall gives off heat by radiation.',
  'walls[].eave.offsetM': 'Negative: to the left.',
  'walls[].eave.transmittance': '0 for a solid roof; more for slats, a trellis or shade cloth.',
  'walls[].alongM': 'Left as seen from outside.',
  'walls[].electrodeDistanceM': 'Along the way the wire takes.',
  'earthing.conductorMm2': 'In mm², or as a wire gauge such as 6 AWG.',
  'earthing.electrodeDepthM': 'The length of a driven rod, where its head is at the surface.',
  'walls[].cableDistanceM': 'Along the way the cable takes.',
};

/** The explanation of the field at a path of the site file; undefined where the label says it all. */
export function fieldHelp(path: string): string | undefined {
  return HELP[path.replace(/\.\d+(?=\.)/g, '[]') as FieldPath];
}
