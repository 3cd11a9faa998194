/** What each path of the heat balance is called, whichever way the heat runs. */
import type { LedgerPath } from './results.ts';

export const LEDGER_WORDS: Readonly<Record<LedgerPath, string>> = {
  sunBeam: 'direct sun',
  sunDiffuse: 'light of the sky',
  sunReflected: 'sunlight off ground and walls',
  dissipation: 'the electronics',
  convection: 'the air outside',
  longwaveSky: 'the sky by radiation',
  longwaveGround: 'the ground by radiation',
  longwaveWall: 'the wall by radiation',
  longwaveSurroundings: 'the surroundings by radiation',
  mounting: 'the wall through the mounting',
  hood: 'the hood and the air behind it',
  vents: 'the air through the vents',
  storage: 'the warmth stored in the box',
};
