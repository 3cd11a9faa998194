/** Words and numbers that the advice shares. */
import { formatQuantity, type UnitSystem, unitSymbol } from '../../../model/index.ts';

/** "7.1 K"; a difference that would round to nothing keeps one digit more. */
export function differenceText(kelvins: number, units: UnitSystem): string {
  const usual = formatQuantity('temperatureDifference', Math.abs(kelvins), units);
  return Number.parseFloat(usual) === 0
    ? formatQuantity('temperatureDifference', Math.abs(kelvins), units, units === 'us' ? 1 : 2)
    : usual;
}

/** "+7.1 K", "−0.5 K", "0 K" */
export function signedDifference(kelvins: number, units: UnitSystem): string {
  const size = differenceText(kelvins, units);
  if (Number.parseFloat(size) === 0) return `0 ${unitSymbol('temperatureDifference', units)}`;
  return `${kelvins > 0 ? '+' : '−'}${size}`;
}

/** "3.6 K inside the limit", "0.1 K past the limit" */
export function roomText(marginK: number, units: UnitSystem): string {
  return `${differenceText(marginK, units)} ${marginK >= 0 ? 'inside' : 'past'} the limit`;
}

export function percentText(share: number): string {
  return `${Math.round(100 * share)} %`;
}

/** A share of tries as a person would say it. */
export function chanceWords(share: number): string {
  if (share <= 0) return 'in none of the cases tried';
  if (share >= 1) return 'in all of the cases tried';
  if (share < 0.1) return 'very unlikely';
  if (share < 0.33) return 'unlikely';
  if (share <= 0.66) return 'about as likely as not';
  return share <= 0.9 ? 'likely' : 'very likely';
}

/** "half an hour", "1 h", "2.5 h" */
export function workText(hours: number): string {
  return hours === 0.5 ? 'half an hour' : `${hours} h`;
}
