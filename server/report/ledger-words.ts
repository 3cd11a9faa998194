import { formatQuantity, LEDGER_PATHS, type Ledger, type LedgerPath, type UnitSystem } from '../../model/index.ts';

/** What each path of the heat balance is called, whichever way the heat runs. */
const PATH_WORDS: Record<LedgerPath, string> = {
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

/** Smaller flows round to nothing beside the rest. */
const SMALLEST_SHOWN_W = 0.05;

/** The heat balance of the box at one instant in two sentences, largest flows first. */
export function ledgerWords(ledger: Ledger, units: UnitSystem): string {
  const flows = (sign: 1 | -1) =>
    LEDGER_PATHS.filter((path) => ledger[path] * sign >= SMALLEST_SHOWN_W)
      .sort((a, b) => (ledger[b] - ledger[a]) * sign)
      .map(
        (path) =>
          `${formatQuantity('power', Math.abs(ledger[path]), units)} ${sign > 0 ? 'from' : 'to'} ${PATH_WORDS[path]}`,
      )
      .join(', ');
  return `Heat comes in: ${flows(1) || 'none'}. Heat goes out: ${flows(-1) || 'none'}.`;
}
