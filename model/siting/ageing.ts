/** How fast electronics and batteries age at the temperatures of a year. */
import { KELVIN } from '../physical-constants.ts';

/** Boltzmann constant, eV/K (CODATA 2018). */
export const BOLTZMANN_EVK = 8.617333e-5;

/** Activation energy of mixed electronics, eV. Common practice, no source: one figure for all wear is an approximation. */
export const ACTIVATION_EV = 0.7;

/** A battery halves its life for each so many kelvins. Common practice, no source. */
export const BATTERY_HALVES_PER_K = 10;

/** Temperature at which a battery lives as long as its maker says, degC. */
export const BATTERY_RATED_C = 25;

/**
 * Rate of ageing at one temperature against another: exp(Ea / k (1 / T1 - 1 / T2)).
 *
 * Source: Arrhenius acceleration factor, NIST/SEMATECH e-Handbook of Statistical Methods, section 8.1.5.1.
 */
export function arrheniusFactor(celsius: number, againstC: number, activationEv = ACTIVATION_EV): number {
  return Math.exp((activationEv / BOLTZMANN_EVK) * (1 / (againstC + KELVIN) - 1 / (celsius + KELVIN)));
}

/**
 * Ageing of a battery at a temperature against 25 degC: doubles for each 10 K above. Below it is that at 25 degC: makers
 * promise no longer life in the cold, where other wear ends a battery. Common practice, no source; up to some 50 degC.
 */
export function batteryAgeing(celsius: number): number {
  return 2 ** (Math.max(0, celsius - BATTERY_RATED_C) / BATTERY_HALVES_PER_K);
}
