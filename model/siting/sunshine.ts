/** From when on direct sun counts as sunshine. */

/** Beam normal to the sun above which the sun is said to shine, W/m2 (WMO guide no. 8, chapter 8). */
export const SUNSHINE_WM2 = 120;

/** What hours of sun count, beside such hours: a sun diagram counts weaker sun, too. */
export const SUNSHINE = `direct sun of ${SUNSHINE_WM2} W/m² and more`;

export const SUNSHINE_ORIGIN = "the WMO's threshold of sunshine, guide no. 8";
