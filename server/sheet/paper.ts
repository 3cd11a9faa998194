/** Sizes of paper that a sheet may have, pt. */
import type { UnitSystem } from '../../model/index.ts';

export const PAPERS = { a4: [595.28, 841.89], letter: [612, 792] } as const;

export type Paper = keyof typeof PAPERS;

export const PAPER_NAMES = Object.keys(PAPERS) as Paper[];

/** The paper that people who read these units have. */
export const USUAL_PAPER: Readonly<Record<UnitSystem, Paper>> = { metric: 'a4', us: 'letter' };
