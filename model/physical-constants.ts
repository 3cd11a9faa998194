/** Stefan-Boltzmann constant, W/(m2 K4) (CODATA 2018). */
export const SIGMA = 5.670374e-8;

/** 0 degC in kelvin. */
export const KELVIN = 273.15;
