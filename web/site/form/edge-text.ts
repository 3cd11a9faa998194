/** How an edge of the building's outline is named; it bears the number that the model's messages give it. */
import { compassPoint, formatQuantity, type outlineEdges, type UnitSystem } from '../../../model/index.ts';

type OutlineEdge = ReturnType<typeof outlineEdges>[number];

/** "faces S, 188°, 14.0 m long" */
export function edgeText({ azimuthDeg, lengthM }: OutlineEdge, units: UnitSystem): string {
  const facing = `faces ${compassPoint(azimuthDeg)}, ${formatQuantity('bearing', azimuthDeg, units)}`;
  return `${facing}, ${formatQuantity('length', lengthM, units, 1)} long`;
}
