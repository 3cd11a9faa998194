/** What the two pictures of a box share. */
import { FACES, type Face, type PlayedDay } from '../../../model/index.ts';
import { type FaceClasses, faceClass, takenInW } from './face-classes.ts';

export interface SceneProps {
  readonly played: PlayedDay;
  readonly step: number;
  readonly classes: FaceClasses;
  /** The same in words. */
  readonly description: string;
}

/** The look of each face at a moment. */
export function faceLook(played: PlayedDay, step: number, classes: FaceClasses): (face: Face) => string {
  return (face) => `face taken-${faceClass(classes, takenInW(played, face, step))}`;
}

/** Whether direct sun reaches any face, or the hood before it. */
export function isLit({ beamWm2 }: PlayedDay, step: number): boolean {
  return FACES.some((face) => (beamWm2[face][step] ?? 0) > 0);
}

export const FACE_NAMES: Record<Face, string> = {
  front: 'front',
  left: 'left',
  right: 'right',
  top: 'top',
  bottom: 'underside',
  back: 'back',
};

/** "Sun 54° high in the west. The front takes in 12.1 W, the top 8.0 W." */
export function sceneWords(played: PlayedDay, step: number, direction: (azimuthDeg: number) => string): string {
  const sun = played.suns[step];
  if (sun === undefined) return '';
  const place =
    sun.elevationDeg > 0
      ? `The sun stands ${Math.round(sun.elevationDeg)}° high in the ${direction(sun.azimuthDeg)}.`
      : 'The sun is down.';
  const taking = FACES.map((face) => ({ face, watts: takenInW(played, face, step) }))
    .filter(({ watts }) => watts >= 0.05)
    .sort((a, b) => b.watts - a.watts)
    .map(({ face, watts }) => `${FACE_NAMES[face]} ${watts.toFixed(1)} W`);
  const faces = taking.length === 0 ? 'No face takes in sun.' : `Sun taken in: ${taking.join(', ')}.`;
  return `${place} ${faces}`;
}
